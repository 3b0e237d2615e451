import { between, distance, type Point, shareAlongSegment } from './point.ts';

/** Length along the polyline, m; 0 for fewer than two points. (0,0), (3,0), (3,4) is 7. */
export function polylineLength(points: readonly Point[]): number {
  let lengthM = 0;
  let before: Point | undefined;
  for (const point of points) {
    if (before !== undefined) lengthM += distance(before, point);
    before = point;
  }
  return lengthM;
}

/** The point of a polyline nearest to a place. */
export interface NearestPoint {
  readonly point: Point;
  /** Index of the segment it lies on: 0 is between the first two points. */
  readonly segment: number;
  /** From the place asked about to `point`, m. */
  readonly distanceM: number;
  /** From the start of the polyline to `point`, along it, m. */
  readonly alongM: number;
}

/**
 * Nearest point of a polyline to p; the earliest of equally near ones. A single point is its own segment 0; null for
 * no points. On (0,0), (4,0) the nearest to (1,2) is (1,0): segment 0, distance 2, along 1.
 */
export function nearestOnPolyline(points: readonly Point[], p: Point): NearestPoint | null {
  const [first] = points;
  if (first === undefined) return null;
  let best: NearestPoint = { point: first, segment: 0, distanceM: distance(first, p), alongM: 0 };
  let alongM = 0;
  let a = first;
  // asked of many lines with every move of a finger: nothing is made but the answer
  for (let segment = 0; segment + 1 < points.length; segment += 1) {
    const b = points[segment + 1] ?? a;
    const point = between(a, b, shareAlongSegment(a, b, p));
    const distanceM = distance(point, p);
    if (distanceM < best.distanceM) best = { point, segment, distanceM, alongM: alongM + distance(a, point) };
    alongM += distance(a, b);
    a = b;
  }
  return best;
}

/**
 * The point `alongM` metres from the start, and its segment; ends hold for lengths below 0 and beyond the end. null for
 * no points. 5 m along (0,0), (3,0), (3,4) is (3,2) on segment 1.
 */
export function pointAlong(points: readonly Point[], alongM: number): { point: Point; segment: number } | null {
  const [first] = points;
  if (first === undefined) return null;
  if (alongM <= 0) return { point: first, segment: 0 };
  let leftM = alongM;
  for (const [a, b, segment] of segmentsOf(points)) {
    const lengthM = distance(a, b);
    if (leftM <= lengthM && lengthM > 0) return { point: between(a, b, leftM / lengthM), segment };
    leftM -= lengthM;
  }
  return { point: points.at(-1) ?? first, segment: Math.max(0, points.length - 2) };
}

/**
 * Cuts a polyline at a point of one of its segments: both parts hold the point. Cutting (0,0), (4,0), (4,3) on segment
 * 0 at (1,0) gives (0,0), (1,0) and (1,0), (4,0), (4,3).
 */
export function splitPolyline(
  points: readonly Point[],
  segment: number,
  point: Point,
): { before: Point[]; after: Point[] } {
  return {
    before: [...points.slice(0, segment + 1), point],
    after: [point, ...points.slice(segment + 1)],
  };
}

/** Every segment of a polyline with its index, in order. */
export function* segmentsOf(points: readonly Point[]): Generator<readonly [a: Point, b: Point, segment: number]> {
  for (const [index, b] of points.entries()) {
    const a = points[index - 1];
    if (a !== undefined) yield [a, b, index - 1];
  }
}
