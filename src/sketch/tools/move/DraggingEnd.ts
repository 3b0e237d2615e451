import type { ConnectRefusal } from '../../../desk/connect.ts';
import { type RunEnd, reconnectRefusal } from '../../../desk/reconnect.ts';
import { wholePlan } from '../../../desk/whole.ts';
import { runById } from '../../../plan/byId.ts';
import { reconnectRun } from '../../../plan/edits/reconnectRun.ts';
import type { Plan, TerminalRef } from '../../../plan/schema.ts';
import { nearestPane } from '../../nearestPane.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import { newEndsAt, refsOf } from '../terminals.ts';
import type { Aim, Workbench } from '../workbench.ts';

type DraggingEnd = StateNamed<'move.draggingEnd'>;

/** An end of a run is under the finger, loose; over a fitting it is shown as it would be joined there. */
export function draggingEnd(state: DraggingEnd, event: HandEvent, bench: Workbench): HandState {
  if (event.kind !== 'dragMove' && event.kind !== 'dragEnd') return state;
  const aim = bench.aimAcross(event.surface, event.at);
  if (aim === null) return state;
  const { runId, end } = state;
  // against the plan as it was: the draft may have the end joined already
  const plan = wholePlan(bench.desk.getState());
  const fittingId = fittingUnder(aim, bench);
  const [only, ...others] = fittingId === null ? [] : newEndsAt(plan, runId, end, fittingId);
  const joined = only === undefined || others.length > 0 ? null : only;
  bench.drafts.show((from) => (joined === null ? from : reconnectRun(from, runId, end, joined)));
  const tip = joined === null ? aim.at : null;
  if (event.kind === 'dragMove') return { ...state, tip };
  if (fittingId === null || (only !== undefined && others.length === 0)) {
    bench.drafts.commit({ selection: { kind: 'run', id: runId } });
    return { name: 'move.idle' };
  }
  bench.drafts.cancel();
  if (only === undefined) {
    bench.refuse(whyNot(plan, runId, end, fittingId));
    return { name: 'move.idle' };
  }
  const pane = nearestPane(bench.panes, event.at, event.surface);
  return { name: 'move.pickingTerminal', runId, end, fittingId, terminals: [only, ...others], pane };
}

function fittingUnder(aim: Aim, bench: Workbench): string | null {
  const picked = bench.pick(aim, true);
  if (picked?.kind === 'fitting') return picked.fittingId;
  return picked?.kind === 'terminal' ? picked.ref.fittingId : null;
}

/** Why none of a fitting's terminals will have the end. */
function whyNot(plan: Plan, runId: string, end: RunEnd, fittingId: string): ConnectRefusal {
  const reasons = refsOf(plan, fittingId).map((ref: TerminalRef) => reconnectRefusal(plan, runId, end, ref));
  const run = runById(plan, runId);
  const isOther = run !== undefined && run[end === 'from' ? 'to' : 'from'].fittingId === fittingId;
  return isOther ? 'sameFitting' : (reasons.find((reason) => reason !== null) ?? 'refused');
}
