/** A free place for something new: near what it belongs to, inside the outline, clear of what stands there. */
import { boxHolds } from '../../geom/box.ts';
import { distance, type Point } from '../../geom/point.ts';
import type { Ground } from './ground.ts';

/** Plates nearer than this to one another hide each other, m. */
const CLEAR_M = 0.24;
const DIRECTIONS = 16;

export interface Wanted {
  /** What it belongs to, and how far from it, m, the best first. */
  readonly from: Point;
  readonly radiiM: readonly number[];
  /** It should lie that way. */
  readonly towards: Point;
  /** Only in the zone of `from`. */
  readonly sameZone: boolean;
}

/** The best free place, or where it would have been were there no other: a plan drawn oddly still gets its parts. */
export function freeSpot({ from, radiiM, towards, sameZone }: Wanted, taken: readonly Point[], ground: Ground): Point {
  const spots = radiiM.flatMap((radiusM, rank) =>
    around(from, radiusM).map((at) => ({ at, cost: fault(at) + distance(at, towards) + 0.2 * rank })),
  );
  function fault(at: Point): number {
    const outside = ground.holds(at) ? 0 : 20;
    const elsewhere = ground.side(at) === ground.side(from) && (!sameZone || ground.zone(at) === ground.zone(from));
    const nearestM = Math.min(Infinity, ...taken.map((other) => distance(other, at)));
    const crowded = nearestM < CLEAR_M ? (4 * (CLEAR_M - nearestM)) / CLEAR_M : 0;
    const column = ground.column !== null && boxHolds(ground.column, at) ? 1.5 : 0;
    return outside + (elsewhere ? 0 : 10) + crowded + column;
  }
  return spots.reduce((best, other) => (other.cost < best.cost - 1e-9 ? other : best)).at;
}

function around(from: Point, radiusM: number): Point[] {
  return Array.from({ length: DIRECTIONS }, (_, index) => {
    const angle = (2 * Math.PI * index) / DIRECTIONS;
    return { xM: from.xM + radiusM * Math.cos(angle), yM: from.yM + radiusM * Math.sin(angle) };
  });
}
