import { useRef, useState } from 'react';
import { openSheet } from '../../desk/openSheet.ts';
import { placeFitting } from '../../desk/place.ts';
import { type FittingKind, MAX_NAME } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { defaultName } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { focusFirstInvalid } from '../controls/firstInvalid.ts';
import { TextField } from '../controls/TextField.tsx';
import { PlaceFields } from '../inspector/PlaceFields.tsx';
import { ALL_KINDS } from '../shelf/kinds.ts';
import { useDeskStore } from '../useDesk.ts';
import type { ListPartProps } from './FittingItems.tsx';

export function AddForm({ plan, onSaid }: ListPartProps) {
  const desk = useDeskStore();
  const form = useRef<HTMLFormElement>(null);
  const [kind, setKind] = useState<FittingKind>('battery');
  const [ownName, setOwnName] = useState<string | null>(null);
  const [at, setAt] = useState({ xM: 0.5, yM: 0.5 });
  const { list, fittings } = words;
  const name = ownName ?? defaultName(kind, plan);
  return (
    <form
      ref={form}
      className="list-form"
      aria-label={list.add}
      onSubmit={(event) => {
        event.preventDefault();
        if (focusFirstInvalid(form.current)) return;
        placeFitting(desk, kind, at, openSheet(desk.getState()).id, name);
        setOwnName(null);
        onSaid(list.added(name));
      }}
    >
      <h3>{list.add}</h3>
      <Choice
        label={list.kind}
        value={kind}
        options={ALL_KINDS.map((value) => ({ value, text: fittings.kinds[value] }))}
        onTake={setKind}
      />
      <TextField
        label={list.name}
        value={name}
        maxLength={MAX_NAME}
        onTake={(text) => setOwnName(text === '' ? null : text)}
      />
      <PlaceFields at={at} onTake={setAt} />
      <button type="submit" className="strong">
        {list.addDo}
      </button>
    </form>
  );
}
