import { useStore } from 'zustand';
import { redoAct, undoAct } from '../../desk/acts/history.ts';
import { runAct } from '../../desk/acts/index.ts';
import type { Plan } from '../../plan/schema.ts';
import { nameOfId, words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { Icon } from './Icon.tsx';

/** The name of what differs between two plans: the first fitting or run that is not the same in both. */
export function changedName(before: Plan, after: Plan): string | null {
  const known = new Set<unknown>([...before.fittings, ...before.runs]);
  const kept = new Set<unknown>([...after.fittings, ...after.runs]);
  const changed = [...after.fittings, ...after.runs].find((item) => !known.has(item));
  if (changed !== undefined) return nameOfId(after, changed.id);
  const gone = [...before.fittings, ...before.runs].find((item) => !kept.has(item));
  return gone === undefined ? null : nameOfId(before, gone.id);
}

/** Undo and redo, under the thumb; each says what it would take back and how many steps there are. */
export function History() {
  const desk = useDeskStore();
  const plan = useDesk((state) => state.plan);
  const act = useDesk((state) => state.act);
  const past = useStore(desk.temporal, (state) => state.pastStates);
  const future = useStore(desk.temporal, (state) => state.futureStates);
  const before = past.at(-1)?.plan;
  const after = future.at(-1);
  const { history } = words;
  const undone = before === undefined ? '' : words.act(act, changedName(before, plan));
  const redone = after?.plan === undefined ? '' : words.act(after.act ?? null, changedName(plan, after.plan));
  return (
    <>
      <button
        type="button"
        aria-label={history.undoLabel(undone, past.length)}
        aria-keyshortcuts={undoAct.keys.join(' ')}
        aria-disabled={past.length === 0}
        data-depth={past.length}
        onClick={() => runAct(desk, undoAct)}
      >
        <Icon name="undo" />
        <span className="tool-word">{history.undo}</span>
      </button>
      <button
        type="button"
        aria-label={history.redoLabel(redone, future.length)}
        aria-keyshortcuts={redoAct.keys.join(' ')}
        aria-disabled={future.length === 0}
        data-depth={future.length}
        onClick={() => runAct(desk, redoAct)}
      >
        <Icon name="redo" />
        <span className="tool-word">{history.redo}</span>
      </button>
    </>
  );
}
