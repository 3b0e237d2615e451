import type { HandDrawing } from '../handDrawing.ts';
import type { Guide } from '../snap.ts';
import { fillWith, type Ink, strokeWith, traceCircle, tracePoints, type View } from './pen.ts';

type Context = CanvasRenderingContext2D;

const BEND_PX = 7;

/** The run being drawn, as far as it goes: it has no end yet, so that it is no part of the plan. */
function paintTrace(context: Context, { trace, stroke }: HandDrawing, view: View): void {
  if (trace === null) return;
  const { palette, halfPlatePx } = view;
  const line = { cap: 'round', join: 'round' } as const;
  tracePoints(context, [trace.start, ...trace.bends, ...stroke], view.frame);
  strokeWith(context, { ...line, colour: palette.casing, widthPx: 11 });
  strokeWith(context, { ...line, colour: palette.accent, widthPx: 6 });
  traceCircle(context, trace.start, halfPlatePx * 1.4, view);
  strokeWith(context, { colour: palette.accent, widthPx: 4 });
  for (const bend of trace.bends) {
    traceCircle(context, bend, BEND_PX, view);
    fillWith(context, palette.raised);
    strokeWith(context, { colour: palette.accent, widthPx: 3 });
  }
}

/** Through the whole pane, so that the finger does not hide where it aims. */
function paintCross(context: Context, { aim }: HandDrawing, { frame, size, palette }: View): void {
  if (aim === null) return;
  const [x, y] = [aim.xM * frame.scale + frame.x, aim.yM * frame.scale + frame.y];
  context.beginPath();
  context.moveTo(0, y);
  context.lineTo(size.widthPx, y);
  context.moveTo(x, 0);
  context.lineTo(x, size.heightPx);
  strokeWith(context, { colour: palette.accent, widthPx: 1 });
}

/** What the hand is about: the lines that pull what it holds, and the run it draws. */
export function paintHandMarks(context: Context, guides: readonly Guide[], drawing: HandDrawing, view: View): void {
  const guide: Ink = { colour: view.palette.accent, widthPx: 1.5, dashPx: [6, 5] };
  for (const { from, to } of guides) {
    tracePoints(context, [from, to], view.frame);
    strokeWith(context, guide);
  }
  paintCross(context, drawing, view);
  paintTrace(context, drawing, view);
}
