import { useStore } from 'zustand';
import { redoAct, undoAct } from '../../desk/acts/history.ts';
import { runAct } from '../../desk/acts/index.ts';
import { wholePlan } from '../../desk/whole.ts';
import type { Proposal } from '../../plan/propose/proposal.ts';
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

interface Step {
  plan: Plan;
  proposal: Proposal;
}

/** The name of what a step was about: in the plan, or where that stayed as it was, in what is proposed for it. */
function nameOfStep(before: Step, after: Step): string | null {
  if (before.plan !== after.plan) return changedName(before.plan, after.plan);
  const then = new Map(before.proposal.map((part) => [part.id, JSON.stringify(part)]));
  const changed = after.proposal.find((part) => then.get(part.id) !== JSON.stringify(part));
  if (changed !== undefined) return nameOfId(wholePlan(after), changed.id);
  const kept = new Set(after.proposal.map(({ id }) => id));
  const gone = before.proposal.find(({ id }) => !kept.has(id));
  return gone === undefined ? null : nameOfId(wholePlan(before), gone.id);
}

/** A step as the history holds it; none where there is none. */
const stepOf = (held: Partial<Step> | undefined): Step | undefined =>
  held?.plan === undefined ? undefined : { plan: held.plan, proposal: held.proposal ?? [] };

/** Undo and redo, under the thumb; each says what it would take back and how many steps there are. */
export function History() {
  const desk = useDeskStore();
  const plan = useDesk((state) => state.plan);
  const proposal = useDesk((state) => state.proposal);
  const act = useDesk((state) => state.act);
  const past = useStore(desk.temporal, (state) => state.pastStates);
  const future = useStore(desk.temporal, (state) => state.futureStates);
  const before = stepOf(past.at(-1));
  const next = future.at(-1);
  const after = stepOf(next);
  const now = { plan, proposal };
  const { history } = words;
  const undone = before === undefined ? '' : words.act(act, nameOfStep(before, now));
  const redone = after === undefined ? '' : words.act(next?.act ?? null, nameOfStep(now, after));
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
