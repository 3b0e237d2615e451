import { dropping } from '../../../desk/place.ts';
import { wholePlan } from '../../../desk/whole.ts';
import { nearestOnPolyline } from '../../../geom/polyline.ts';
import { fittingById, runsAt } from '../../../plan/byId.ts';
import { cableThrough } from '../../../plan/edits/cable.ts';
import { moveFitting } from '../../../plan/edits/moveFitting.ts';
import { slideFitting } from '../../../plan/edits/slideFitting.ts';
import type { Plan, Point } from '../../../plan/schema.ts';
import { INLINE_KINDS } from '../../../plan/terminals.ts';
import { remembered } from '../../remembered.ts';
import { nearestRun } from '../nearestRun.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Aim, Workbench } from '../workbench.ts';

/** A fitting is under the finger: it follows, and the answer with it; the plan changes when the finger lifts. */
export function draggingFitting(
  state: StateNamed<'move.draggingFitting'>,
  event: HandEvent,
  bench: Workbench,
): HandState {
  if (event.kind !== 'dragMove' && event.kind !== 'dragEnd') return state;
  const finger = bench.aim(event.surface, event.at);
  if (finger === null) return state;
  const aim = { ...finger, at: { xM: finger.at.xM + state.grip.xM, yM: finger.at.yM + state.grip.yM } };
  const { edit, splits } = editFor(state, aim, event.alt, bench);
  bench.drafts.show(edit);
  if (event.kind === 'dragMove') return { ...state, splits };
  bench.drafts.commit();
  return { name: 'move.idle' };
}

function editFor(
  state: StateNamed<'move.draggingFitting'>,
  aim: Aim,
  alt: boolean,
  bench: Workbench,
): { edit: (plan: Plan) => Plan; splits: string | null } {
  const { fittingId, newRunId } = state;
  // against the plan as it was: the draft already has the fitting somewhere else
  const plan = wholePlan(bench.desk.getState());
  if (state.act === 'dropOnRun') {
    const run = nearestRun(plan, bench.sheetId, aim.at, bench.runReachM(aim.pxPerM));
    if (run !== null) {
      bench.rest();
      return { edit: dropping(fittingId, run.runId, run.at, newRunId), splits: run.runId };
    }
  }
  const near = nearestOnPolyline(cableOf(plan, fittingId), aim.at);
  if (near !== null && near.distanceM <= bench.runReachM(aim.pxPerM)) {
    bench.rest();
    return { edit: (from) => slideFitting(from, fittingId, near.point), splits: null };
  }
  const at = bench.snap(aim, { alt, except: fittingId });
  return { edit: (from) => moveFitting(from, fittingId, at, bench.sheetId), splits: null };
}

/**
 * The cable in which a fuse or pass-through sits, as one line; empty when it sits in none that it may slide along. The
 * same for all moves of a gesture.
 */
const cableOf = remembered((plan: Plan, fittingId: string): readonly Point[] => {
  const fitting = fittingById(plan, fittingId);
  const [first, second, ...others] = runsAt(plan, fittingId);
  if (
    fitting === undefined ||
    !INLINE_KINDS.has(fitting.kind) ||
    first === undefined ||
    second === undefined ||
    others.length > 0
  )
    return [];
  if (first.locked || second.locked) return [];
  return cableThrough(plan, fitting, first, second)?.points ?? [];
});
