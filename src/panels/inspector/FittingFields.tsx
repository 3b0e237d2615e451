import { type Fitting, MAX_NAME, type Plan, type Zone } from '../../plan/schema.ts';
import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { shownName } from '../../words/names.ts';
import { Choice } from '../controls/Choice.tsx';
import { TextField } from '../controls/TextField.tsx';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { useAnswer } from '../useDesk.ts';
import { AmplifierFields } from './AmplifierFields.tsx';
import { BatteryFields } from './BatteryFields.tsx';
import { BlockFields } from './BlockFields.tsx';
import { ContinuationFields } from './ContinuationFields.tsx';
import { FuseFields } from './FuseFields.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { BusFields, ContactFields, LoadFields, PassThroughFields, ReducerFields } from './SmallFields.tsx';
import {
  AlternatorFields,
  CapacitorFields,
  ChargerFields,
  RemoteSourceFields,
  TakeOffFields,
} from './SourceFields.tsx';
import { MaybeGauge } from './Told.tsx';
import { useFittingChange } from './useChange.ts';

function OfKind({ fitting, plan }: { fitting: Fitting; plan: Plan }) {
  switch (fitting.kind) {
    case 'battery':
      return <BatteryFields battery={fitting} plan={plan} />;
    case 'fuse':
    case 'breaker':
      return <FuseFields fuse={fitting} plan={plan} />;
    case 'passThrough':
      return <PassThroughFields passThrough={fitting} />;
    case 'block':
      return <BlockFields block={fitting} plan={plan} />;
    case 'bus':
      return <BusFields bus={fitting} />;
    case 'reducer':
      return <ReducerFields reducer={fitting} />;
    case 'amplifier':
      return <AmplifierFields amplifier={fitting} />;
    case 'load':
      return <LoadFields load={fitting} />;
    case 'alternator':
      return <AlternatorFields alternator={fitting} />;
    case 'jumpPost':
      return <RemoteSourceFields source={fitting} />;
    case 'takeOff':
      return <TakeOffFields takeOff={fitting} />;
    case 'charger':
      return <ChargerFields charger={fitting} />;
    case 'relay':
    case 'switch':
      return <ContactFields contact={fitting} />;
    case 'capacitor':
      return <CapacitorFields capacitor={fitting} />;
    case 'continuation':
      return <ContinuationFields point={fitting} plan={plan} />;
    case 'ground':
      return null;
  }
}

const KIND_TERMS: Partial<Record<Fitting['kind'], TermId>> = {
  fuse: 'fuseHolder',
  passThrough: 'passThrough',
  block: 'distributionBlock',
  ground: 'groundPoint',
};

/** What a fitting is, for those whose name is a trade word. */
function KindHelp({ kind }: { kind: Fitting['kind'] }) {
  const help = useTerm();
  const id = KIND_TERMS[kind];
  if (id === undefined) return null;
  return (
    <div className="kind-help">
      <Term id={id} help={help} word={words.fittings.kinds[kind]} />
      <TermNote help={help} />
    </div>
  );
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
  const { inspector, fieldLabels } = words;
  const caution = words.fittingCautions[fitting.kind];
  const shown = shownName(plan, fitting);
  return (
    <div className="fields">
      <KindHelp kind={fitting.kind} />
      <OfKind fitting={fitting} plan={plan} />
      {caution === null ? null : <p className="caution">{caution}</p>}
      <TextField
        label={inspector.name}
        value={shown}
        maxLength={MAX_NAME}
        onTake={(name) => name !== shown && change({ name })}
      />
      <Choice
        label={inspector.zone}
        value={fitting.zone}
        options={zoneOptions(assessed)}
        onTake={(zone) => change({ zone })}
      />
      <MaybeGauge
        text={{ ...fieldLabels.takes, term: 'terminal' }}
        value={fitting.takes}
        onTake={(takes) => change({ takes })}
      />
      {fitting.kind === 'continuation' ? null : <PlaceFields at={fitting.at} onTake={(at) => move(at)} />}
    </div>
  );
}
