import { pointsOfFlat } from '../../drawing/runs.ts';
import type { Drawing } from '../../drawing/shapes.ts';
import { endHandles } from '../tools/runEnds.ts';
import { type Frame, fillWith, strokeWith, traceFlat, type View } from './pen.ts';

/** Of the padlock's picture, screen px. */
const RADIUS_PX = 10;
const SHACKLE_PX = [-2.6, -0.5, -2.6, -3.6, -1.6, -5.2, 1.6, -5.2, 2.6, -3.6, 2.6, -0.5];
const BODY_PX = [-4.4, -0.8, 4.4, -0.8, 4.4, 5, -4.4, 5];

/** A small padlock: shackle and body on a round plate. */
function paintPadlock(context: CanvasRenderingContext2D, x: number, y: number, { palette }: View): void {
  const frame: Frame = { x, y, scale: 1 };
  context.beginPath();
  context.arc(x, y, RADIUS_PX, 0, 2 * Math.PI);
  fillWith(context, palette.raised);
  strokeWith(context, { colour: palette.ink, widthPx: 1.5 });
  traceFlat(context, SHACKLE_PX, frame);
  strokeWith(context, { colour: palette.ink, widthPx: 1.6, join: 'miter' });
  traceFlat(context, BODY_PX, frame);
  fillWith(context, palette.ink);
}

/** On what is locked: at the corner of a plate, and on a run where the handle of its first end would be. */
export function paintLocks(
  context: CanvasRenderingContext2D,
  { fittings, runs }: Pick<Drawing, 'fittings' | 'runs'>,
  locked: ReadonlySet<string>,
  view: View,
): void {
  if (locked.size === 0) return;
  const { frame, halfPlatePx } = view;
  for (const { fittingId, at } of fittings) {
    if (!locked.has(fittingId)) continue;
    const [x, y] = [at.xM * frame.scale + frame.x, at.yM * frame.scale + frame.y];
    paintPadlock(context, x + halfPlatePx, y - halfPlatePx, view);
  }
  for (const { runId, points } of runs) {
    const [first] = locked.has(runId) ? endHandles(pointsOfFlat(points), frame.scale) : [];
    if (first === undefined) continue;
    paintPadlock(context, first.at.xM * frame.scale + frame.x, first.at.yM * frame.scale + frame.y, view);
  }
}
