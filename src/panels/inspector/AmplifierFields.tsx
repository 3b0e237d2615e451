import { useState } from 'react';
import type { FittingOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { writeRatings } from '../../words/ratings.ts';
import { Choice } from '../controls/Choice.tsx';
import { Field } from '../controls/Field.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { readNumbers } from '../controls/readNumbers.ts';
import { Tick } from '../controls/Tick.tsx';
import { type Read, useDraft } from '../controls/useDraft.ts';
import { inputBounds } from '../inputs.ts';
import { InputField, MaybeField } from './Told.tsx';
import { told, useFittingChange } from './useChange.ts';

const MAX_ONBOARD = 12;

/** '30 30' -> [30, 30]; '0' -> none on it; '' -> not told. */
function readFuses(text: string): Read<number[] | null> {
  const { onboard, onboardHint } = words.inspector;
  if (text.trim() === '') return { ok: true, value: null };
  if (/^0 ?A?$/i.test(text.trim())) return { ok: true, value: [] };
  const read = readNumbers(text, inputBounds('amplifier.onboardFusesA'), onboard, onboardHint);
  return read.ok ? { ok: true, value: read.value.slice(0, MAX_ONBOARD) } : read;
}

const shownFuses = (fuses: readonly number[] | null): string =>
  fuses === null ? '' : fuses.length === 0 ? '0' : writeRatings(fuses);

export function AmplifierFields({ amplifier }: { amplifier: FittingOf<'amplifier'> }) {
  const { change } = useFittingChange(amplifier.id);
  const [refusal, setRefusal] = useState('');
  const { inspector, fittings } = words;
  const text = words.fieldLabels.amplifier;
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
      <Choice
        {...text.supplyInputs}
        value={amplifier.supplyInputs}
        options={(['one', 'two'] as const).map((value) => ({ value, text: text.inputsOf[value] }))}
        onTake={(supplyInputs) => setRefusal(change({ supplyInputs }) ? '' : text.inputsInUse)}
      />
      {refusal === '' ? null : (
        <p className="error" role="alert">
          {refusal}
        </p>
      )}
      <InputField ownerId={amplifier.id} part="amplifier" path="idleA" input={amplifier.idleA} text={text.idleA} />
      <MaybeField path="amplifier.duty" value={amplifier.duty} text={text.duty} onTake={(duty) => change({ duty })} />
    </>
  );
}
