import { dropping } from '../../../desk/place.ts';
import { wholePlan } from '../../../desk/whole.ts';
import { nearestOnPolyline } from '../../../geom/polyline.ts';
import { cableThrough, freeInCable } from '../../../plan/edits/cable.ts';
import { moveFitting } from '../../../plan/edits/moveFitting.ts';
import { passFitting, runsBeyond } from '../../../plan/edits/passFitting.ts';
import { slideFitting } from '../../../plan/edits/slideFitting.ts';
import type { Proposal } from '../../../plan/propose/proposal.ts';
import { runPoints } from '../../../plan/runs.ts';
import type { Plan, Point, Run } from '../../../plan/schema.ts';
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
  const aim = bench.aimInSight(event.surface, event.at, state.gripPx);
  if (aim === null) return state;
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
  const { proposal } = bench.desk.getState();
  // against the plan as it was: the draft already has the fitting somewhere else
  const plan = wholePlan(bench.desk.getState());
  if (state.act === 'dropOnRun') {
    const run = nearestRun(plan, bench.sheetId, aim, bench.runReachM(aim.pxPerM));
    if (run !== null) {
      bench.rest();
      return { edit: dropping(fittingId, run.runId, run.at, newRunId), splits: run.runId };
    }
  }
  const way = nearestWay(waysOf(plan, proposal, fittingId), aim.at, bench.runReachM(aim.pxPerM));
  if (way !== null) {
    bench.rest();
    const { runId, at } = way;
    const along = (from: Plan): Plan =>
      runId === null ? slideFitting(from, fittingId, at) : passFitting(from, fittingId, runId, at, newRunId);
    return { edit: along, splits: null };
  }
  const at = bench.snap(aim, { alt, except: fittingId });
  return { edit: (from) => moveFitting(from, fittingId, at, bench.sheetId), splits: null };
}

/** A line along which a fitting slides: its own cable, or a run beyond it. */
interface Way {
  /** The run that it would go into; null on its own cable. */
  readonly runId: string | null;
  readonly points: readonly Point[];
}

/** What edits round to is as near as the other, m. */
const AS_NEAR_M = 0.0001;

/** The nearest place of the nearest way; the first of equally near ones, so that its own cable holds a fitting. */
function nearestWay(ways: readonly Way[], place: Point, reachM: number): { runId: string | null; at: Point } | null {
  let best: { runId: string | null; at: Point; distanceM: number } | null = null;
  for (const { runId, points } of ways) {
    const near = nearestOnPolyline(points, place);
    if (near === null || near.distanceM > reachM) continue;
    if (best !== null && near.distanceM > best.distanceM - AS_NEAR_M) continue;
    best = { runId, at: near.point, distanceM: near.distanceM };
  }
  return best;
}

/**
 * The cable in which a fuse or pass-through sits, as one line, and the runs on to which it slides past the fittings at
 * its ends; none when it sits in none that it may slide along. The same for all moves of a gesture.
 */
const waysOf = remembered((plan: Plan, proposal: Proposal, fittingId: string): readonly Way[] => {
  const inCable = freeInCable(plan, fittingId);
  if (inCable === null) return [];
  const { fitting, first, second } = inCable;
  const own = cableThrough(plan, fitting, first, second)?.points ?? [];
  // a cable of the plan that went into one that is only proposed would be refused with it
  const proposed = new Set(proposal.map(({ id }) => id));
  const isOfItsKind = ({ id }: Run): boolean => proposed.has(id) === proposed.has(fittingId);
  const beyond = isOfItsKind(first) && isOfItsKind(second) ? runsBeyond(plan, fittingId) : [];
  const runs = beyond.map(({ run }) => run).filter(isOfItsKind);
  return [{ runId: null, points: own }, ...runs.map((run) => ({ runId: run.id, points: runPoints(plan, run) }))];
});
