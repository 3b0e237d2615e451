import { useState } from 'react';
import { strandsOf } from '../../assess/strandsOf.ts';
import type { Conductor, Plan, Run } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { NumberField } from '../controls/NumberField.tsx';
import { inputBounds } from '../inputs.ts';
import { useUnits } from '../useDesk.ts';

interface StrandsProps {
  run: Run;
  plan: Plan;
  onTake: (patch: Partial<Conductor>) => void;
}

/** A cable without a mark: strands counted and one measured give its metal, and that the size it may be taken as. */
export function Strands({ run: { conductor }, plan, onTake }: StrandsProps) {
  const units = useUnits();
  const text = words.fieldLabels.run;
  const { strands } = conductor;
  // one of the two typed: not yet a pair
  const [half, setHalf] = useState<{ count: number | null; diameterMm: number | null }>({
    count: null,
    diameterMm: null,
  });
  const shown = strands ?? half;
  const take = (patch: Partial<typeof half>) => {
    const { count, diameterMm } = { ...shown, ...patch };
    setHalf({ count, diameterMm });
    const isPair = count !== null && diameterMm !== null;
    if (isPair || strands !== null) onTake({ strands: isPair ? { count: Math.round(count), diameterMm } : null });
  };
  const answer = strandsOf(conductor, plan.settings.sizeSystem);
  return (
    <fieldset className="outputs">
      <legend>{text.strands}</legend>
      <p className="hint">{text.strandsHint}</p>
      <div className="field-pair">
        <NumberField
          label={text.strandCount}
          value={shown.count}
          {...inputBounds('run.conductor.strands.count')}
          mayBeEmpty
          onTake={(count) => take({ count })}
        />
        <NumberField
          label={text.strandDiameter}
          value={shown.diameterMm}
          {...inputBounds('run.conductor.strands.diameterMm')}
          mayBeEmpty
          onTake={(diameterMm) => take({ diameterMm })}
        />
      </div>
      {answer === null ? null : <StrandsAnswer {...answer} size={conductor.size} units={units} onTake={onTake} />}
    </fieldset>
  );
}

interface StrandsAnswerProps extends NonNullable<ReturnType<typeof strandsOf>> {
  size: Conductor['size'];
  units: ReturnType<typeof useUnits>;
  onTake: StrandsProps['onTake'];
}

function StrandsAnswer({ areaMm2, proves, size, units, onTake }: StrandsAnswerProps) {
  const text = words.fieldLabels.run;
  return (
    <>
      <p data-strands-area>{text.strandsGive(units.area(areaMm2))}</p>
      {proves === null ? <p>{text.strandsTooSmall}</p> : null}
      {proves === null || proves === size ? null : (
        <button type="button" onClick={() => onTake({ size: proves })}>
          {text.strandsTake(units.gauge(proves))}
        </button>
      )}
    </>
  );
}
