import { laneSizeAt, seenLine } from '../../drawing/lanes.ts';
import type { Point } from '../../geom/point.ts';
import { nearestOnPolyline } from '../../geom/polyline.ts';
import { runPoints } from '../../plan/runs.ts';
import type { Plan } from '../../plan/schema.ts';
import type { Aim } from './workbench.ts';

/**
 * The run of a sheet that is seen nearest to a place, with the nearest point of its own line; null when none is within
 * reach. Locked ones are left out.
 */
export function nearestRun(
  plan: Plan,
  sheetId: string,
  { at, pxPerM }: Aim,
  reachM: number,
): { runId: string; at: Point } | null {
  const laneSize = laneSizeAt(pxPerM);
  let best: { runId: string; at: Point; distanceM: number } | null = null;
  for (const run of plan.runs) {
    if (run.sheetId !== sheetId || run.locked) continue;
    const { points, isInLane } = seenLine(plan, run, laneSize);
    const near = nearestOnPolyline(points, at);
    if (near === null || near.distanceM > reachM) continue;
    if (best === null || near.distanceM < best.distanceM) {
      const own = isInLane ? nearestOnPolyline(runPoints(plan, run), at) : near;
      best = { runId: run.id, at: (own ?? near).point, distanceM: near.distanceM };
    }
  }
  return best === null ? null : { runId: best.runId, at: best.at };
}
