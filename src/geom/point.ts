/** A place in the plane of a sheet, metres: x toward the rear, y down the screen. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

/** Straight-line distance, m. (0, 0) to (3, 4) is 5. */
export const distance = (a: Point, b: Point): number => Math.hypot(b.xM - a.xM, b.yM - a.yM);

/** The point a share `t` of the way from a (t = 0) to b (t = 1). Halfway from (0, 0) to (2, 4) is (1, 2). */
export const between = (a: Point, b: Point, t: number): Point => ({
  xM: a.xM + (b.xM - a.xM) * t,
  yM: a.yM + (b.yM - a.yM) * t,
});

/** How far along the segment a-b (0 at a, 1 at b, never beyond) its nearest point to p lies. 0 for a segment of no length. */
export function shareAlongSegment(a: Point, b: Point, p: Point): number {
  const dx = b.xM - a.xM;
  const dy = b.yM - a.yM;
  const square = dx * dx + dy * dy;
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, ((p.xM - a.xM) * dx + (p.yM - a.yM) * dy) / square));
}

/** Distance from p to the segment a-b, m. (1, 1) to the segment (0, 0)-(2, 0) is 1. */
export const distanceToSegment = (a: Point, b: Point, p: Point): number =>
  distance(between(a, b, shareAlongSegment(a, b, p)), p);
