import { useRef, useState } from 'react';
import { placeFitting } from '../../desk/place.ts';
import { pointAlong, polylineLength } from '../../geom/polyline.ts';
import { runById } from '../../plan/byId.ts';
import { runPoints } from '../../plan/runs.ts';
import type { FittingKind, Plan, Point, Run } from '../../plan/schema.ts';
import { INLINE_KINDS } from '../../plan/terminals.ts';
import { words } from '../../words/full.ts';
import { defaultName, runTitle } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { focusFirstInvalid } from '../controls/firstInvalid.ts';
import { PlaceFields } from '../inspector/PlaceFields.tsx';
import { LengthField } from '../keypad/LengthField.tsx';
import { ALL_KINDS } from '../shelf/kinds.ts';
import { useDeskStore, useUnits } from '../useDesk.ts';
import type { ListPartProps } from './FittingItems.tsx';

type How = 'along' | 'at';

const NONE = '';
const INLINE = ALL_KINDS.filter((kind) => INLINE_KINDS.has(kind));

/** Length of the run as drawn on the sheet, true metres: what a length along it counts in. */
const drawnM = (plan: Plan, run: Run): number => polylineLength(runPoints(plan, run)) * scaleOf(plan, run);
const scaleOf = (plan: Plan, run: Run): number => plan.sheets.find(({ id }) => id === run.sheetId)?.scale.value ?? 1;

export function SplitForm({ plan, onSaid }: ListPartProps) {
  const desk = useDeskStore();
  const units = useUnits();
  const form = useRef<HTMLFormElement>(null);
  const [kind, setKind] = useState<FittingKind>('fuse');
  const [runId, setRunId] = useState(NONE);
  const [how, setHow] = useState<How>('along');
  const [alongM, setAlong] = useState(0.3);
  const [at, setAt] = useState<Point>({ xM: 0.5, yM: 0.5 });
  const [error, setError] = useState<string | null>(null);
  const { list, fittings } = words;
  const run = runById(plan, runId);

  const send = () => {
    if (focusFirstInvalid(form.current)) return;
    if (run === undefined) {
      setError(list.chooseRun);
      return;
    }
    const lengthM = drawnM(plan, run);
    if (how === 'along' && alongM >= lengthM) {
      setError(list.beyondRun(units.length(lengthM)));
      return;
    }
    const place = how === 'at' ? at : pointAlong(runPoints(plan, run), alongM / scaleOf(plan, run))?.point;
    if (place === undefined) return;
    const name = defaultName(kind, plan);
    placeFitting(desk, kind, place, run.sheetId, name, run.id);
    setError(null);
    onSaid(list.splitDone(name, runTitle(plan, run)));
  };

  return (
    <form
      ref={form}
      className="list-form"
      aria-label={list.split}
      onSubmit={(event) => {
        event.preventDefault();
        send();
      }}
    >
      <h3>{list.split}</h3>
      <Choice
        label={list.kind}
        value={kind}
        options={INLINE.map((value) => ({ value, text: fittings.kinds[value] }))}
        onTake={setKind}
      />
      <Choice
        label={list.splitRun}
        value={run === undefined ? NONE : runId}
        options={[
          { value: NONE, text: list.choose },
          ...plan.runs.map((one) => ({ value: one.id, text: runTitle(plan, one) })),
        ]}
        onTake={setRunId}
      />
      <Choice
        label={list.splitHow}
        value={how}
        options={[
          { value: 'along', text: list.splitAlong },
          { value: 'at', text: list.splitAt },
        ]}
        onTake={setHow}
      />
      {how === 'along' ? (
        <LengthField label={list.along} valueM={alongM} minM={0} maxM={100} onTake={(m) => m !== null && setAlong(m)} />
      ) : (
        <PlaceFields at={at} onTake={setAt} />
      )}
      {error === null ? null : (
        <p className="error" role="alert">
          {error}
        </p>
      )}
      <button type="submit" className="strong">
        {list.splitDo}
      </button>
    </form>
  );
}
