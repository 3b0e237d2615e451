import { addBend } from '../../../plan/edits/addBend.ts';
import { moveBend } from '../../../plan/edits/moveBend.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';

/** A bend is under the finger: an old one, or one that the drag of a run's body has just put in. */
export function draggingBend(state: StateNamed<'move.draggingBend'>, event: HandEvent, bench: Workbench): HandState {
  if (event.kind !== 'dragMove' && event.kind !== 'dragEnd') return state;
  const aim = bench.aimInSight(event.surface, event.at);
  if (aim === null) return state;
  const { runId, index, isNew } = state;
  const at = bench.snap(aim, { alt: event.alt, from: state.before });
  bench.drafts.show((plan) => (isNew ? addBend : moveBend)(plan, runId, index, at));
  if (event.kind === 'dragMove') return state;
  bench.drafts.commit({ selection: { kind: 'bend', id: runId, index } });
  return { name: 'move.idle' };
}
