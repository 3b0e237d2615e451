import { type Fitting, MAX_NAME, type Plan, type Zone } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { TextField } from '../controls/TextField.tsx';
import { useAnswer } from '../useDesk.ts';
import { AmplifierFields } from './AmplifierFields.tsx';
import { BatteryFields } from './BatteryFields.tsx';
import { BlockFields } from './BlockFields.tsx';
import { FuseFields } from './FuseFields.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { useFittingChange } from './useChange.ts';

const CAUTIONS = {
  battery: words.cautions.battery,
  fuse: words.cautions.fuse,
  passThrough: words.cautions.passThrough,
  ground: words.cautions.ground,
  block: null,
  amplifier: null,
} as const;

function OfKind({ fitting, plan }: { fitting: Fitting; plan: Plan }) {
  switch (fitting.kind) {
    case 'battery':
      return <BatteryFields battery={fitting} />;
    case 'fuse':
      return <FuseFields fuse={fitting} plan={plan} />;
    case 'block':
      return <BlockFields block={fitting} plan={plan} />;
    case 'amplifier':
      return <AmplifierFields amplifier={fitting} />;
    default:
      return null;
  }
}

/** The zones, 'from the outline' saying what that is here. */
export function zoneOptions(assessed: Exclude<Zone, 'auto'> | undefined): { value: Zone; text: string }[] {
  const { zones } = words.fittings;
  const auto = assessed === undefined ? zones.auto : `${zones.auto}: ${zones[assessed]}`;
  const rest: Exclude<Zone, 'auto'>[] = ['bay', 'wing', 'hot', 'cabin', 'cargo', 'under'];
  return [{ value: 'auto', text: auto }, ...rest.map((value) => ({ value, text: zones[value] }))];
}

export function FittingFields({ fitting, plan }: { fitting: Fitting; plan: Plan }) {
  const { change, move } = useFittingChange(fitting.id);
  const assessed = useAnswer().zones[fitting.id];
  const { inspector } = words;
  const caution = CAUTIONS[fitting.kind];
  return (
    <div className="fields">
      <OfKind fitting={fitting} plan={plan} />
      {caution === null ? null : <p className="caution">{caution}</p>}
      <TextField label={inspector.name} value={fitting.name} maxLength={MAX_NAME} onTake={(name) => change({ name })} />
      <Choice
        label={inspector.zone}
        value={fitting.zone}
        options={zoneOptions(assessed)}
        onTake={(zone) => change({ zone })}
      />
      <PlaceFields at={fitting.at} onTake={move} />
    </div>
  );
}
