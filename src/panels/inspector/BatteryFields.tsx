import type { FittingOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { NumberField } from '../controls/NumberField.tsx';
import { Tick } from '../controls/Tick.tsx';
import { inputBounds } from '../inputs.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { told, useFittingChange } from './useChange.ts';

/** A strap that is ticked on: the project's assumption, as for a new battery. */
const USUAL_STRAP = {
  lengthM: { value: 0.4, origin: 'assumed', source: 'feedrunRules' },
  areaMm2: { value: 25, origin: 'assumed', source: 'feedrunRules' },
} as const;

export function BatteryFields({ battery }: { battery: FittingOf<'battery'> }) {
  const { change } = useFittingChange(battery.id);
  const { inspector, fittings } = words;
  const { strap } = battery;
  const mark = (origin: keyof typeof fittings.origins) => inspector.origin(fittings.origins[origin]);
  return (
    <>
      <NumberField
        label={inspector.cca}
        value={battery.ccaA.value}
        {...inputBounds('battery.ccaA')}
        mark={mark(battery.ccaA.origin)}
        onTake={(value) => value !== null && change({ ccaA: told(value) })}
      />
      <NumberField
        label={inspector.ah}
        value={battery.capacityAh.value}
        {...inputBounds('battery.capacityAh')}
        mark={mark(battery.capacityAh.origin)}
        onTake={(value) => value !== null && change({ capacityAh: told(value) })}
      />
      <Tick
        label={inspector.strap}
        checked={strap !== null}
        onTake={(isThere) =>
          change({
            strap: isThere ? { lengthM: { ...USUAL_STRAP.lengthM }, areaMm2: { ...USUAL_STRAP.areaMm2 } } : null,
          })
        }
      />
      {strap === null ? null : (
        <div className="field-pair">
          <LengthField
            label={inspector.strapLength}
            valueM={strap.lengthM.value}
            minM={0.01}
            maxM={20}
            mark={mark(strap.lengthM.origin)}
            onTake={(value) => value !== null && change({ strap: { ...strap, lengthM: told(value) } })}
          />
          <NumberField
            label={inspector.strapArea}
            value={strap.areaMm2.value}
            {...inputBounds('battery.strap.areaMm2')}
            mark={mark(strap.areaMm2.origin)}
            onTake={(value) => value !== null && change({ strap: { ...strap, areaMm2: told(value) } })}
          />
        </div>
      )}
    </>
  );
}
