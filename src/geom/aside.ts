import { between, distance, type Point } from './point.ts';
import { nearestOnPolyline } from './polyline.ts';

/** A share of a first or last piece that is left to run beside the line, however short the piece is. */
const MOST_TAPER = 0.3;
/** At a turn sharper than about 120 degrees the corner is cut off: it would run far out. */
const LEAST_SQUARE = 0.5;

/** To the right of the way from a to b as seen on the screen, of length 1; none for two points in one place. */
function besides(a: Point, b: Point): Point {
  const lengthM = distance(a, b);
  return lengthM === 0 ? { xM: 0, yM: 0 } : { xM: (a.yM - b.yM) / lengthM, yM: (b.xM - a.xM) / lengthM };
}

const moved = (p: Point, along: Point, byM: number): Point => ({
  xM: p.xM + along.xM * byM,
  yM: p.yM + along.yM * byM,
});

/** A corner beside the line: as far from the piece before it as from the one behind. */
function corner(before: Point, at: Point, behind: Point, byM: number): Point {
  const [one, other] = [besides(before, at), besides(at, behind)];
  const square = Math.max(LEAST_SQUARE, 1 + one.xM * other.xM + one.yM * other.yM);
  return moved(at, { xM: one.xM + other.xM, yM: one.yM + other.yM }, byM / square);
}

/** A place on the way from a to b, and as far beside it. */
function tapered(a: Point, b: Point, taperM: number, byM: number): Point {
  const lengthM = distance(a, b);
  const share = lengthM === 0 ? 0 : Math.min(MOST_TAPER, taperM / lengthM);
  return moved(between(a, b, share), besides(a, b), byM);
}

/**
 * The line `byM` to the right of a line of two points or more (below 0: to the left). It leaves from the same place and
 * arrives there, and is beside it from `taperM` behind the one to `taperM` before the other: two points more than the
 * line has. (0,0), (10,0) by 1 with a taper of 2 is (0,0), (2,1), (8,1), (10,0).
 */
export function asideOf(points: readonly Point[], byM: number, taperM: number): Point[] {
  return points.flatMap((at, index) => {
    const [before, behind] = [points[index - 1], points[index + 1]];
    if (before === undefined) return behind === undefined ? [at] : [at, tapered(at, behind, taperM, byM)];
    if (behind === undefined) return [tapered(at, before, taperM, -byM), at];
    return [corner(before, at, behind, byM)];
  });
}

/** A place on a line, as far to the right of it. */
export function besideAt(points: readonly Point[], at: Point, byM: number): Point {
  const segment = nearestOnPolyline(points, at)?.segment ?? 0;
  const [a, b] = [points[segment], points[segment + 1]];
  return a === undefined || b === undefined ? at : moved(at, besides(a, b), byM);
}
