import { commit } from '../../../desk/edit.ts';
import { reconnectRefusal } from '../../../desk/reconnect.ts';
import { wholePlan } from '../../../desk/whole.ts';
import { reconnectRun } from '../../../plan/edits/reconnectRun.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';

/** The end of a run was let go on a fitting with several terminals: they stand beside it as tabs. */
export function pickingTerminal(
  state: StateNamed<'move.pickingTerminal'>,
  event: HandEvent,
  bench: Workbench,
): HandState {
  if (event.kind === 'back' || event.kind === 'drop' || event.kind === 'tap') return { name: 'move.idle' };
  if (event.kind !== 'choose') return state;
  const ref = state.terminals.find(({ terminal }) => terminal === event.terminal);
  if (ref === undefined) return state;
  const { runId, end } = state;
  const reason = reconnectRefusal(wholePlan(bench.desk.getState()), runId, end, ref);
  if (reason !== null) bench.refuse(reason);
  else {
    const selection = { kind: 'run', id: runId } as const;
    commit(bench.desk, 'reconnect', (plan) => reconnectRun(plan, runId, end, ref), { selection });
  }
  return { name: 'move.idle' };
}
