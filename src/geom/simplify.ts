import { distanceToSegment, type Point } from './point.ts';

/**
 * The polyline with every point left out that strays no more than `toleranceM` from what remains (Ramer, Douglas and
 * Peucker). Ends stay. (0,0), (1,0.001), (2,0) within 0.01 m is (0,0), (2,0).
 */
export function simplify(points: readonly Point[], toleranceM: number): Point[] {
  const last = points.length - 1;
  const keep = new Set<number>([0, last]);
  // a list of stretches still to look at instead of recursion: a long free-hand line must not exhaust the stack
  const stretches: [from: number, to: number][] = [[0, last]];
  for (let stretch = stretches.pop(); stretch !== undefined; stretch = stretches.pop()) {
    const [from, to] = stretch;
    const farthest = farthestBetween(points, from, to);
    if (farthest === null || farthest.distanceM <= toleranceM) continue;
    keep.add(farthest.index);
    stretches.push([from, farthest.index], [farthest.index, to]);
  }
  return points.filter((_, index) => keep.has(index));
}

function farthestBetween(
  points: readonly Point[],
  from: number,
  to: number,
): { index: number; distanceM: number } | null {
  const a = points[from];
  const b = points[to];
  if (a === undefined || b === undefined) return null;
  let farthest: { index: number; distanceM: number } | null = null;
  for (let index = from + 1; index < to; index++) {
    const point = points[index];
    if (point === undefined) continue;
    const distanceM = distanceToSegment(a, b, point);
    if (farthest === null || distanceM > farthest.distanceM) farthest = { index, distanceM };
  }
  return farthest;
}
