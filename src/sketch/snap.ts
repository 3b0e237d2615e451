/** Where a thing held by a finger comes to lie: on the axis of another, on a 45 degree line, else on the grid. */
import { distance } from '../geom/point.ts';
import { snapAngle, snapToGrid } from '../geom/snap.ts';
import type { Point } from '../plan/schema.ts';
import { snapStepM } from './grid.ts';

/** How near a line has to be to pull, screen px. */
const PULL_PX = 7;
const ANGLE_DEG = 45;

export interface SnapAim {
  point: Point;
  pxPerM: number;
  /** Other fittings: their axes pull. */
  others: readonly Point[];
  /** The bend or terminal before: lines from it at 45 degrees pull. */
  from: Point | null;
}

/** A line that pulled, for drawing: from the thing it belongs to. */
export interface Guide {
  from: Point;
  to: Point;
}

export interface Snapped {
  point: Point;
  guides: readonly Guide[];
}

/** The fittings whose axes pull most, along and across the sheet; null where none is near enough. */
function axisPulls({ xM, yM }: Point, others: readonly Point[], pullM: number): [Point | null, Point | null] {
  let onX: Point | null = null;
  let onY: Point | null = null;
  let leastXM = pullM;
  let leastYM = pullM;
  // with every move, over all of a large plan: it makes nothing that would have to be collected
  for (const other of others) {
    const offXM = Math.abs(other.xM - xM);
    const offYM = Math.abs(other.yM - yM);
    // of two as near the first
    if (offXM < leastXM || (offXM === leastXM && onX === null)) {
      onX = other;
      leastXM = offXM;
    }
    if (offYM < leastYM || (offYM === leastYM && onY === null)) {
      onY = other;
      leastYM = offYM;
    }
  }
  return [onX, onY];
}

/** Pulls the point to what is near; the grid holds on each axis that nothing pulls. */
export function snapPoint({ point, pxPerM, others, from }: SnapAim): Snapped {
  const pullM = PULL_PX / pxPerM;
  const [onX, onY] = axisPulls(point, others, pullM);
  const gridded = snapToGrid(point, snapStepM(pxPerM));
  const snapped = { xM: onX?.xM ?? gridded.xM, yM: onY?.yM ?? gridded.yM };
  if (onX === null && onY === null && from !== null) {
    const onRay = snapAngle(from, point, ANGLE_DEG);
    if (distance(onRay, point) <= pullM) return { point: onRay, guides: [{ from, to: onRay }] };
  }
  const pulling = onX === onY ? [onX] : [onX, onY];
  const guides = pulling.flatMap((other) => (other === null ? [] : [{ from: other, to: snapped }]));
  return { point: snapped, guides };
}
