import type { FittingOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { parseNumber } from '../../words/length.ts';
import { Choice } from '../controls/Choice.tsx';
import { Field } from '../controls/Field.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { Tick } from '../controls/Tick.tsx';
import { type Read, useDraft } from '../controls/useDraft.ts';
import { inputBounds } from '../inputs.ts';
import { told, useFittingChange } from './useChange.ts';

const MAX_ONBOARD = 12;

/** '30 30' -> [30, 30]; '0' -> none on it; '' -> not told. */
function readFuses(text: string): Read<number[] | null> {
  const { fields, inspector } = words;
  const parts = text.split(/[\s;+]+/).filter((part) => part !== '');
  if (parts.length === 0) return { ok: true, value: null };
  if (parts.length === 1 && Number(parts[0]) === 0) return { ok: true, value: [] };
  const { min, max } = inputBounds('amplifier.onboardFuseA');
  const read = parts.slice(0, MAX_ONBOARD).map((part) => parseNumber(part, min, max));
  for (const one of read) {
    if (one.ok) continue;
    const problem = fields.numberProblem(one.problem, inspector.onboard, String(min), String(max));
    return { ok: false, error: `${problem} ${inspector.onboardHint}` };
  }
  return { ok: true, value: read.flatMap((one) => (one.ok ? [one.value] : [])) };
}

const shownFuses = (fuses: readonly number[] | null): string =>
  fuses === null ? '' : fuses.length === 0 ? '0' : fuses.join(' ');

export function AmplifierFields({ amplifier }: { amplifier: FittingOf<'amplifier'> }) {
  const { change } = useFittingChange(amplifier.id);
  const { inspector, fittings } = words;
  const mark = (origin: keyof typeof fittings.origins) => inspector.origin(fittings.origins[origin]);
  const notTold = inspector.origin(inspector.notTold);
  const onboard = useDraft<number[] | null>(shownFuses(amplifier.onboardFusesA), readFuses, (onboardFusesA) =>
    change({ onboardFusesA }),
  );
  return (
    <>
      <NumberField
        label={inspector.ratedW}
        value={amplifier.ratedW?.value ?? null}
        {...inputBounds('amplifier.ratedW')}
        mayBeEmpty
        mark={amplifier.ratedW === null ? notTold : mark(amplifier.ratedW.origin)}
        onTake={(value) => change({ ratedW: value === null ? null : told(value) })}
      />
      <NumberField
        label={inspector.loadOhm}
        value={amplifier.loadOhm}
        {...inputBounds('amplifier.loadOhm')}
        mayBeEmpty
        {...(amplifier.loadOhm === null ? { mark: notTold } : {})}
        onTake={(loadOhm) => change({ loadOhm })}
      />
      <Field
        label={inspector.onboard}
        draft={onboard}
        hint={inspector.onboardHint}
        {...(amplifier.onboardFusesA === null ? { mark: notTold } : {})}
      />
      <NumberField
        label={inspector.externalMax}
        value={amplifier.externalFuseMaxA}
        {...inputBounds('amplifier.externalFuseMaxA')}
        mayBeEmpty
        {...(amplifier.externalFuseMaxA === null ? { mark: notTold } : {})}
        onTake={(externalFuseMaxA) => change({ externalFuseMaxA })}
      />
      <Choice
        label={inspector.ampClass}
        value={amplifier.ampClass}
        options={[
          { value: 'D', text: fittings.ampClasses.D },
          { value: 'AB', text: fittings.ampClasses.AB },
        ]}
        onTake={(ampClass) => change({ ampClass })}
      />
      <NumberField
        label={inspector.efficiency}
        value={amplifier.efficiency.value}
        {...inputBounds('amplifier.efficiency')}
        mark={mark(amplifier.efficiency.origin)}
        onTake={(value) => value !== null && change({ efficiency: told(value) })}
      />
      <Tick
        label={`${inspector.regulated} ${mark(amplifier.regulated.origin)}`}
        checked={amplifier.regulated.value}
        onTake={(isRegulated) => change({ regulated: told(isRegulated) })}
      />
    </>
  );
}
