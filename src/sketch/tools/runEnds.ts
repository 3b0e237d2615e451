/** The ends of the run that is picked out: handles beside the plates they lead to, to be taken somewhere else. */
import type { RunEnd } from '../../desk/reconnect.ts';
import { halfPlatePx } from '../../drawing/fittings.ts';
import type { Picked } from '../../drawing/pick.ts';
import { distance } from '../../geom/point.ts';
import { pointAlong, polylineLength } from '../../geom/polyline.ts';
import type { Point } from '../../plan/schema.ts';
import type { Held } from './state.ts';
import type { Aim, Workbench } from './workbench.ts';

/** From the edge of the plate to the handle, px. */
const OFF_PLATE_PX = 14;
/** On a short run the handles keep apart: no further from their ends than this part of it. */
const MOST_SHARE = 0.3;

/** Where the handles of a run stand, from the line it is drawn as. */
export function endHandles(points: readonly Point[], pxPerM: number): { end: RunEnd; at: Point }[] {
  const lengthM = polylineLength(points);
  const offM = Math.min((halfPlatePx(pxPerM) + OFF_PLATE_PX) / pxPerM, MOST_SHARE * lengthM);
  const [from, to] = [pointAlong(points, offM), pointAlong(points, lengthM - offM)];
  if (from === null || to === null) return [];
  return [
    { end: 'from', at: from.point },
    { end: 'to', at: to.point },
  ];
}

/** The handle under a finger, of the run that is picked out; null where something else is nearer. */
export function endUnder(bench: Workbench, { at, pxPerM }: Aim, other: Picked | null): Held | null {
  const { selection } = bench.desk.getState();
  if (selection === null || selection.kind === 'fitting') return null;
  const run = bench.plan.runs.find(({ id }) => id === selection.id);
  if (run === undefined || run.locked || run.sheetId !== bench.sheetId) return null;
  const { points, isInLane } = bench.seenLine(run, pxPerM);
  // the run's own body is under its handle; a plate, a bend or the run in the next lane may be meant instead
  const isUnder = other === null || (other.kind === 'run' && (other.runId === run.id || !isInLane));
  const otherPx = isUnder ? bench.reachPx : distance(other.at, at) * pxPerM;
  const near = endHandles(points, pxPerM)
    .map((handle) => ({ ...handle, px: distance(handle.at, at) * pxPerM }))
    .filter(({ px }) => px <= bench.reachPx && px <= otherPx)
    .sort((a, b) => a.px - b.px)[0];
  return near === undefined ? null : { kind: 'end', runId: run.id, end: near.end, at: near.at };
}
