import { commit } from '../../desk/edit.ts';
import { select } from '../../desk/selection.ts';
import { moveBend } from '../../plan/edits/moveBend.ts';
import type { Run } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { useDeskStore } from '../useDesk.ts';
import { PlaceFields } from './PlaceFields.tsx';

export function BendFields({ run, index }: { run: Run; index: number }) {
  const desk = useDeskStore();
  const at = run.bends[index];
  if (at === undefined) return null;
  return (
    <div className="fields">
      <PlaceFields at={at} onTake={(to) => commit(desk, 'moveBend', (plan) => moveBend(plan, run.id, index, to))} />
      <button type="button" onClick={() => select(desk, { kind: 'run', id: run.id })}>
        {words.inspector.whole}
      </button>
    </div>
  );
}
