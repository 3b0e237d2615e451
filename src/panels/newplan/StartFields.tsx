import type { UsualStart } from '../../plan/usualStart.ts';
import { words } from '../../words/full.ts';

/** Outputs that are offered by one tap, W; any other is told afterwards. Common practice. */
const OUTPUTS_W = [300, 500, 800, 1000, 1500] as const;
const MOST = 8;
const PLACES = [null, 'front', 'seat', 'rear'] as const;

/** What is placed at once, at its usual place: a battery, and amplifiers by their output. */
export function StartFields({ start, onTake }: { start: UsualStart; onTake: (start: UsualStart) => void }) {
  const { newPlanDialog: text } = words;
  const { amplifiersW } = start;
  return (
    <>
      <fieldset className="choices">
        <legend>{text.battery}</legend>
        {PLACES.map((battery) => (
          <label key={battery ?? 'none'} className="choice">
            <input
              type="radio"
              name="battery"
              checked={start.battery === battery}
              onChange={() => onTake({ ...start, battery })}
            />
            <span>{battery === null ? text.noBattery : text.batteryAt[battery]}</span>
          </label>
        ))}
      </fieldset>
      <fieldset className="choices">
        <legend>{text.amplifiers}</legend>
        {OUTPUTS_W.map((ratedW) => (
          <button
            key={ratedW}
            type="button"
            disabled={amplifiersW.length >= MOST}
            onClick={() => onTake({ ...start, amplifiersW: [...amplifiersW, ratedW] })}
          >
            {text.addAmplifier(ratedW)}
          </button>
        ))}
      </fieldset>
      {amplifiersW.length === 0 ? null : (
        <p className="new-plan-amplifiers">
          <span role="status">{text.chosen(amplifiersW)}</span>
          <button type="button" onClick={() => onTake({ ...start, amplifiersW: amplifiersW.slice(0, -1) })}>
            {text.removeLast}
          </button>
        </p>
      )}
    </>
  );
}
