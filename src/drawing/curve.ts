/** Flat outlines with curves, as the outlines of vehicles need them. */

/** Pieces of a cubic: enough that no corner shows when the bay fills a large screen. */
const CURVE_PIECES = 24;
const CORNER_PIECES = 8;
/** Larger ones, on the body. */
const ROUND_PIECES = 12;

type Spot = readonly [x: number, y: number];

/** Points along a cubic Bezier curve, without its first point. */
export function cubic(p0: Spot, p1: Spot, p2: Spot, p3: Spot): number[] {
  const flat: number[] = [];
  for (let piece = 1; piece <= CURVE_PIECES; piece += 1) {
    const t = piece / CURVE_PIECES;
    const u = 1 - t;
    for (const axis of [0, 1] as const) {
      flat.push(u * u * u * p0[axis] + 3 * u * u * t * p1[axis] + 3 * u * t * t * p2[axis] + t * t * t * p3[axis]);
    }
  }
  return flat;
}

/** A closed rectangle with round corners. */
export function roundRect(x0: number, y0: number, x1: number, y1: number, radius: number): number[] {
  const r = Math.min(radius, (x1 - x0) / 2, (y1 - y0) / 2);
  const corners: readonly [number, number, number][] = [
    [x1 - r, y0 + r, -Math.PI / 2],
    [x1 - r, y1 - r, 0],
    [x0 + r, y1 - r, Math.PI / 2],
    [x0 + r, y0 + r, Math.PI],
  ];
  return corners.flatMap(([cx, cy, start]) =>
    Array.from({ length: CORNER_PIECES + 1 }, (_, piece) => {
      const angle = start + (piece / CORNER_PIECES) * (Math.PI / 2);
      return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
    }).flat(),
  );
}

/** A corner, and how far from it along either side its rounding begins. */
export type Corner = readonly [x: number, y: number, roundM: number];

/** A closed line round corners that are rounded off; a side too short for both of its roundings is shared by them. */
export function rounded(corners: readonly Corner[]): number[] {
  return corners.flatMap(([x, y, wishedM], i) => {
    const [before, after] = [corners.at(i - 1), corners[(i + 1) % corners.length]].map(
      ([nextX, nextY] = [x, y, 0]): Spot => [nextX - x, nextY - y],
    ) as [Spot, Spot];
    const [inM, outM] = [Math.hypot(...before), Math.hypot(...after)];
    const roundM = Math.min(wishedM, inM / 2.1, outM / 2.1);
    if (roundM <= 0) return [x, y];
    return Array.from({ length: ROUND_PIECES + 1 }, (_, piece) => {
      const t = piece / ROUND_PIECES;
      const [a, b] = [((1 - t) ** 2 * roundM) / inM, (t ** 2 * roundM) / outM];
      return [x + a * before[0] + b * after[0], y + a * before[1] + b * after[1]];
    }).flat();
  });
}

/** The same points with y counted from the other edge, for what sits on the other side of the vehicle. */
export function mirrorY(points: readonly number[], widthM: number): number[] {
  return points.map((value, index) => (index % 2 === 1 ? widthM - value : value));
}
