/** Shapes cut to a stretch along the vehicle: a sheet of the bay is not a sheet of the whole. */
import type { Shape } from './shapes.ts';

/** From x to x, m; open ends are infinite. */
export interface Strip {
  readonly fromXM: number;
  readonly toXM: number;
}

type Spot = readonly [x: number, y: number];

const CIRCLE_PIECES = 48;

/** What lies in the strip. Fills are cut straight; a stroke ends there and does not run along the cut. */
export const cropped = (shapes: readonly Shape[], strip: Strip): Shape[] =>
  shapes.flatMap((shape) => cut(shape, strip));

function cut(shape: Shape, strip: Strip): Shape[] {
  const [least, most] = reach(shape);
  if (most < strip.fromXM || least > strip.toXM) return [];
  if (least >= strip.fromXM && most <= strip.toXM) return [shape];
  const { stroke, fill } = shape;
  const points = shape.kind === 'circle' ? ring(shape) : spots(shape.points);
  const isClosed = shape.kind === 'circle' || shape.closed;
  const inside = fill === null ? [] : filled(points, strip);
  const lines = stroke === null ? [] : pieces(isClosed ? [...points, ...points.slice(0, 1)] : points, strip);
  return [
    ...(inside.length < 3 ? [] : [{ kind: 'line', points: inside.flat(), closed: true, stroke: null, fill } as const]),
    ...lines.map((piece) => ({ kind: 'line', points: piece.flat(), closed: false, stroke, fill: null }) as const),
  ];
}

function reach(shape: Shape): readonly [least: number, most: number] {
  if (shape.kind === 'circle') return [shape.x - shape.radius, shape.x + shape.radius];
  const xs = spots(shape.points).map(([x]) => x);
  return [Math.min(...xs), Math.max(...xs)];
}

const spots = (flat: readonly number[]): Spot[] =>
  Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i] ?? 0, flat[2 * i + 1] ?? 0]);

const ring = ({ x, y, radius }: Extract<Shape, { kind: 'circle' }>): Spot[] =>
  Array.from({ length: CIRCLE_PIECES }, (_, i) => {
    const angle = (2 * Math.PI * i) / CIRCLE_PIECES;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

const crossing = ([x0, y0]: Spot, [x1, y1]: Spot, x: number): Spot => [x, y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)];

/** The polygon cut at either end of the strip. */
function filled(polygon: readonly Spot[], { fromXM, toXM }: Strip): Spot[] {
  const cutAt = (points: readonly Spot[], x: number, isIn: (spot: Spot) => boolean): Spot[] =>
    points.flatMap((spot, i) => {
      const before = points.at(i - 1) ?? spot;
      const edge = isIn(before) === isIn(spot) ? [] : [crossing(before, spot, x)];
      return isIn(spot) ? [...edge, spot] : edge;
    });
  const behind = cutAt(polygon, fromXM, ([x]) => x >= fromXM);
  return cutAt(behind, toXM, ([x]) => x <= toXM);
}

const isSame = (one: Spot | undefined, other: Spot): boolean => one?.[0] === other[0] && one[1] === other[1];

/** The stretches of a line that lie in the strip. */
function pieces(line: readonly Spot[], { fromXM, toXM }: Strip): Spot[][] {
  const found: Spot[][] = [];
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a === undefined || Math.max(a[0], b[0]) < fromXM || Math.min(a[0], b[0]) > toXM) continue;
    const within = (spot: Spot): Spot =>
      spot[0] < fromXM ? crossing(a, b, fromXM) : spot[0] > toXM ? crossing(a, b, toXM) : spot;
    const [start, end] = [within(a), within(b)];
    if (isSame(start, end)) continue;
    const last = found.at(-1);
    if (last !== undefined && isSame(last.at(-1), start)) last.push(end);
    else found.push([start, end]);
  }
  return found;
}
