import type { PaneSize, ScreenPoint } from '../desk/camera.ts';
import type { Selection } from '../desk/desk.ts';
import { laneSizeAt, seenLine } from '../drawing/lanes.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { segmentsOf, shareWithin } from './labelGround.ts';

const WIDTH_PX = 148;
const GAP_PX = 18;
const EDGE_PX = 8;

interface Sized {
  width: number;
  height: number;
}

/** Below the bend, above or beside it: on the first side on which it is over no other cable, so that each can be held. */
function sideOf(at: ScreenPoint, { width, height }: Sized, size: PaneSize, lines: readonly (readonly ScreenPoint[])[]) {
  const across = at.xPx - width / 2;
  const middle = at.yPx - height / 2;
  const within = (value: number, length: number, room: number) =>
    Math.max(EDGE_PX, Math.min(room - length - EDGE_PX, value));
  const sides = [
    { left: within(across, width, size.widthPx), top: at.yPx + GAP_PX },
    { left: within(across, width, size.widthPx), top: at.yPx - GAP_PX - height },
    { left: at.xPx + GAP_PX, top: within(middle, height, size.heightPx) },
    { left: at.xPx - GAP_PX - width, top: within(middle, height, size.heightPx) },
  ];
  const fitting = sides.filter(
    ({ left, top }) => left >= 0 && top >= 0 && left + width <= size.widthPx && top + height + EDGE_PX <= size.heightPx,
  );
  const isClear = ({ left, top }: { left: number; top: number }) => {
    const box = { x: left + width / 2, y: top + height / 2, w: width, h: height };
    return !lines.some((line) => segmentsOf(line).some((segment) => shareWithin(box, segment) >= 0));
  };
  return (
    fitting.find(isClear) ?? fitting[0] ?? { left: within(across, width, size.widthPx), top: at.yPx - GAP_PX - height }
  );
}

/** Beside a bend that is picked out: takes it away. */
export function BendButton(props: {
  selection: Extract<Selection, { kind: 'bend' }>;
  plan: Plan;
  pxPerM: number;
  place: (at: Point) => { xPx: number; yPx: number } | null;
  size: PaneSize;
  targetPx: number;
  textScale: number;
  onRemove: (runId: string, index: number) => void;
}) {
  const { selection, plan, pxPerM, place, size, targetPx, textScale, onRemove } = props;
  const width = WIDTH_PX * textScale;
  const run = plan.runs.find(({ id }) => id === selection.id);
  const bend = run?.bends[selection.index];
  const at = bend === undefined ? null : place(bend);
  if (run === undefined || run.locked || at === null) return null;
  const isSeen = at.xPx >= 0 && at.yPx >= 0 && at.xPx <= size.widthPx && at.yPx <= size.heightPx;
  if (!isSeen) return null;
  const others = plan.runs.filter(({ id, sheetId }) => id !== run.id && sheetId === run.sheetId);
  const lines = others.map((other) =>
    seenLine(plan, other, laneSizeAt(pxPerM)).points.flatMap((end) => place(end) ?? []),
  );
  const { left, top } = sideOf(at, { width, height: targetPx }, size, lines);
  return (
    <button
      type="button"
      className="sketch-bend"
      style={{ left, top, width }}
      onClick={() => onRemove(selection.id, selection.index)}
    >
      {words.sketch.drawing.removeBend}
    </button>
  );
}
