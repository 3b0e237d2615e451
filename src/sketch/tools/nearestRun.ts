import type { Point } from '../../geom/point.ts';
import { nearestOnPolyline } from '../../geom/polyline.ts';
import { runPoints } from '../../plan/runs.ts';
import type { Plan } from '../../plan/schema.ts';

/** The run of a sheet nearest to a place, with its nearest point; null when none is within reach. Locked ones are left out. */
export function nearestRun(
  plan: Plan,
  sheetId: string,
  at: Point,
  reachM: number,
): { runId: string; at: Point } | null {
  let best: { runId: string; at: Point; distanceM: number } | null = null;
  for (const run of plan.runs) {
    if (run.sheetId !== sheetId || run.locked) continue;
    const near = nearestOnPolyline(runPoints(plan, run), at);
    if (near === null || near.distanceM > reachM) continue;
    if (best === null || near.distanceM < best.distanceM) {
      best = { runId: run.id, at: near.point, distanceM: near.distanceM };
    }
  }
  return best === null ? null : { runId: best.runId, at: best.at };
}
