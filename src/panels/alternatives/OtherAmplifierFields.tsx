import { likelyOther, type OtherAmplifier } from '../../plan/alternatives/otherAmplifier.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { inputBounds } from '../inputs.ts';

/** Which amplifier another would stand in for, and how strong it is. */
export function OtherAmplifierFields(props: {
  plan: Plan;
  other: OtherAmplifier | null;
  onTake: (other: OtherAmplifier) => void;
}) {
  const { plan, other, onTake } = props;
  const { alternatives } = words;
  if (other === null) return null;
  const amplifiers = plan.fittings.filter(({ kind }) => kind === 'amplifier');
  return (
    <div className="field-pair alternatives-other">
      <Choice
        label={alternatives.which}
        value={other.fittingId}
        options={amplifiers.map(({ id }) => ({ value: id, text: nameOfId(plan, id) ?? id }))}
        onTake={(fittingId) => onTake({ fittingId, ratedW: likelyOther(plan, fittingId)?.ratedW ?? other.ratedW })}
      />
      <NumberField
        label={alternatives.ratedW}
        value={other.ratedW}
        {...inputBounds('amplifier.ratedW')}
        onTake={(ratedW) => ratedW !== null && onTake({ ...other, ratedW })}
      />
    </div>
  );
}
