/** Symbols on their plates: each kind is put together once for a size, and is then a few strokes and no single lines. */
import type { FittingShape, Shape } from '../../drawing/shapes.ts';
import { fillWith, inkOf, strokeWith, type View } from './pen.ts';

/** Of what is proposed: pale, and legible still. */
export const GHOST_OPACITY = 0.72;

interface Part extends Pick<Shape, 'stroke' | 'fill'> {
  readonly path: Path2D;
}

type Parts = readonly Part[];

/** Zooms at which a kind is kept: of two panes, and of the thumb-sized pictures. */
const MOST_SCALES = 4;

const known = new WeakMap<FittingShape['parts'], Map<number, Parts>>();

function trace(path: Path2D, shape: Shape, scale: number): void {
  if (shape.kind === 'circle') {
    const [x, y, radius] = [shape.x * scale, shape.y * scale, shape.radius * scale];
    path.moveTo(x + radius, y);
    path.arc(x, y, radius, 0, 2 * Math.PI);
    return;
  }
  const { points, closed } = shape;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x, y] = [(points[i] ?? 0) * scale, (points[i + 1] ?? 0) * scale];
    if (i === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  }
  if (closed) path.closePath();
}

/** Lines that follow one another in one ink are one stroke; what is filled stays by itself. */
const goesWith = (part: Part | undefined, shape: Shape): part is Part =>
  part !== undefined && part.fill === null && shape.fill === null && part.stroke === shape.stroke;

function put(shapes: readonly Shape[], scale: number): Parts {
  const parts: Part[] = [];
  for (const shape of shapes) {
    const last = parts.at(-1);
    const part = goesWith(last, shape) ? last : { path: new Path2D(), stroke: shape.stroke, fill: shape.fill };
    if (part !== last) parts.push(part);
    trace(part.path, shape, scale);
  }
  return parts;
}

function partsAt(shapes: FittingShape['parts'], scale: number): Parts {
  const scales = known.get(shapes) ?? new Map<number, Parts>();
  known.set(shapes, scales);
  const before = scales.get(scale);
  if (before !== undefined) return before;
  if (scales.size >= MOST_SCALES) scales.clear();
  const parts = put(shapes, scale);
  scales.set(scale, parts);
  return parts;
}

/** At a size of their own that the zoom changes only within bounds. */
export function paintFittings(context: CanvasRenderingContext2D, fittings: readonly FittingShape[], view: View): void {
  const { frame, palette, halfPlatePx } = view;
  for (const { at, parts, isProposed } of fittings) {
    const [x, y] = [at.xM * frame.scale + frame.x, at.yM * frame.scale + frame.y];
    context.globalAlpha = isProposed === true ? GHOST_OPACITY : 1;
    context.translate(x, y);
    for (const { path, fill, stroke } of partsAt(parts, halfPlatePx)) {
      if (fill !== null) fillWith(context, palette[fill], path);
      if (stroke !== null) strokeWith(context, inkOf(stroke, palette), path);
    }
    context.translate(-x, -y);
  }
  context.globalAlpha = 1;
}
