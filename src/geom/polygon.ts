import { distanceToSegment, type Point } from './point.ts';

/** A point this near an edge lies on it, m: far below the 0.1 mm that places are rounded to. */
const ON_EDGE_M = 1e-9;

/** The sides of a polygon, the last one back to its first corner. */
export function* sidesOf(corners: readonly Point[]): Generator<readonly [a: Point, b: Point]> {
  for (const [index, b] of corners.entries()) {
    const a = corners.at(index - 1);
    if (a !== undefined) yield [a, b];
  }
}

/**
 * Whether p lies in the polygon, its edges included; of one that crosses itself, by the even-odd rule. The triangle
 * (0,0), (2,0), (0,2) holds (0.5, 0.5) and (1, 1), not (1.1, 1).
 */
export function polygonHolds(corners: readonly Point[], p: Point): boolean {
  let inside = false;
  for (const [a, b] of sidesOf(corners)) {
    if (distanceToSegment(a, b, p) <= ON_EDGE_M) return true;
    // a ray towards greater x: an end on the ray counts for the upper side only, so that a corner is crossed once
    if (a.yM > p.yM === b.yM > p.yM) continue;
    if (p.xM < a.xM + ((p.yM - a.yM) / (b.yM - a.yM)) * (b.xM - a.xM)) inside = !inside;
  }
  return inside;
}

/** Where along the segment a-b (0 at a, 1 at b) it crosses the line through c and d within c-d; null where it does not. */
export function crossingShare(a: Point, b: Point, [c, d]: readonly [Point, Point]): number | null {
  const [ux, uy] = [b.xM - a.xM, b.yM - a.yM];
  const [vx, vy] = [d.xM - c.xM, d.yM - c.yM];
  const turn = ux * vy - uy * vx;
  if (turn === 0) return null;
  const [wx, wy] = [c.xM - a.xM, c.yM - a.yM];
  const onSide = (wx * uy - wy * ux) / turn;
  return onSide < 0 || onSide > 1 ? null : (wx * vy - wy * vx) / turn;
}
