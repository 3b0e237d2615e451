import type { RunShape } from '../../drawing/shapes.ts';
import { strokeWith, traceFlat, type View } from './pen.ts';
import { GHOST_OPACITY } from './plates.ts';

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
