import type { ConnectRefusal } from '../desk/connect.ts';
import { words } from '../words/index.ts';
import type { HandState } from './tools/state.ts';

/** What can be done with the run being drawn, without a keyboard: one bend back, or not at all. */
export function HandBar(props: {
  handName: HandState['name'];
  refusal: ConnectRefusal | null;
  onBack: () => void;
  onDrop: () => void;
}) {
  const { handName, refusal, onBack, onDrop } = props;
  const { drawing } = words.sketch;
  const isDrawing = handName === 'run.drawing' || handName === 'run.pickingTerminal';
  if (!isDrawing && handName !== 'run.idle' && handName !== 'place.aiming') return null;
  const hint =
    handName === 'run.idle' ? drawing.startHint : handName === 'place.aiming' ? drawing.aimHint : drawing.goOnHint;
  return (
    <div className="sketch-hand">
      <p role="status">{refusal === null ? hint : words.refusals[refusal]}</p>
      {isDrawing && (
        <>
          <button type="button" onClick={onBack}>
            {drawing.back}
          </button>
          <button type="button" onClick={onDrop}>
            {drawing.cancel}
          </button>
        </>
      )}
    </div>
  );
}
