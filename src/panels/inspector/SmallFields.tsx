/** Fittings with one or two figures of their own. */
import type { FittingOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Tick } from '../controls/Tick.tsx';
import { InputField, LengthInput, MaybeField, MILLI } from './Told.tsx';
import { useFittingChange } from './useChange.ts';

export function PassThroughFields({ passThrough }: { passThrough: FittingOf<'passThrough'> }) {
  const { change } = useFittingChange(passThrough.id);
  return (
    <MaybeField
      path="passThrough.grommetInsideMm"
      value={passThrough.grommetInsideMm}
      text={{ ...words.fieldLabels.passThrough.grommetInsideMm, term: 'grommet' }}
      onTake={(grommetInsideMm) => change({ grommetInsideMm })}
    />
  );
}

export function BusFields({ bus }: { bus: FittingOf<'bus'> }) {
  const { change } = useFittingChange(bus.id);
  return (
    <MaybeField
      path="bus.ratedA"
      value={bus.ratedA}
      text={words.fieldLabels.bus.ratedA}
      onTake={(ratedA) => change({ ratedA })}
    />
  );
}

export function ReducerFields({ reducer }: { reducer: FittingOf<'reducer'> }) {
  return (
    <LengthInput
      ownerId={reducer.id}
      part="reducer"
      path="lengthM"
      input={reducer.lengthM}
      text={words.fieldLabels.reducer.lengthM}
    />
  );
}

export function LoadFields({ load }: { load: FittingOf<'load'> }) {
  return (
    <InputField
      ownerId={load.id}
      part="load"
      path="currentA"
      input={load.currentA}
      text={words.fieldLabels.load.currentA}
    />
  );
}

/** A relay or a switch: what its contact carries, and, worked by hand, how it stands. */
export function ContactFields({ contact }: { contact: FittingOf<'relay' | 'switch'> }) {
  const { change } = useFittingChange(contact.id);
  const text = words.fieldLabels.contact;
  return (
    <>
      {contact.kind === 'switch' ? (
        <Tick {...text.closed} checked={contact.closed} onTake={(closed) => change({ closed })} />
      ) : null}
      <MaybeField
        path={`${contact.kind}.ratedA`}
        value={contact.ratedA}
        text={text.ratedA}
        onTake={(ratedA) => change({ ratedA })}
      />
      <InputField
        ownerId={contact.id}
        part={contact.kind}
        path="contactOhm"
        input={contact.contactOhm}
        text={text.contactOhm}
        factor={MILLI}
      />
    </>
  );
}
