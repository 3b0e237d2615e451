import type { FittingShape, RunShape } from '../../drawing/shapes.ts';
import { paintShapes, strokeWith, traceFlat, type View } from './pen.ts';

/** Of what is proposed: pale, and legible still. */
const GHOST_OPACITY = 0.72;

/** Cables: a light edge, then the thick stroke of their kind. */
export function paintRuns(context: CanvasRenderingContext2D, runs: readonly RunShape[], view: View): void {
  for (const { points, kind, stroke, casing, isProposed } of runs) {
    context.globalAlpha = isProposed === true ? GHOST_OPACITY : 1;
    traceFlat(context, points, view.frame);
    const edge = view.palette[casing.colour];
    strokeWith(context, { colour: edge, widthPx: casing.widthPx, dashPx: casing.dashPx, cap: 'round' });
    const cap = kind === 'remote' ? 'butt' : 'round';
    strokeWith(context, { colour: view.palette[stroke.colour], widthPx: stroke.widthPx, dashPx: stroke.dashPx, cap });
  }
  context.globalAlpha = 1;
}

/** Symbols on their plates, at a size of their own that the zoom changes only within bounds. */
export function paintFittings(context: CanvasRenderingContext2D, fittings: readonly FittingShape[], view: View): void {
  const { frame, palette, halfPlatePx: scale } = view;
  for (const { at, parts, isProposed } of fittings) {
    context.globalAlpha = isProposed === true ? GHOST_OPACITY : 1;
    paintShapes(context, parts, { x: at.xM * frame.scale + frame.x, y: at.yM * frame.scale + frame.y, scale }, palette);
  }
  context.globalAlpha = 1;
}
