import type { PaneSize } from '../desk/camera.ts';
import type { Selection } from '../desk/desk.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { words } from '../words/index.ts';

const WIDTH_PX = 148;
const GAP_PX = 18;
const EDGE_PX = 8;

/** Beside a bend that is picked out: takes it away. */
export function BendButton(props: {
  selection: Extract<Selection, { kind: 'bend' }>;
  plan: Plan;
  place: (at: Point) => { xPx: number; yPx: number } | null;
  size: PaneSize;
  targetPx: number;
  textScale: number;
  onRemove: (runId: string, index: number) => void;
}) {
  const { selection, plan, place, size, targetPx, textScale, onRemove } = props;
  const width = WIDTH_PX * textScale;
  const run = plan.runs.find(({ id }) => id === selection.id);
  const bend = run?.bends[selection.index];
  const at = bend === undefined ? null : place(bend);
  if (run === undefined || run.locked || at === null) return null;
  const isSeen = at.xPx >= 0 && at.yPx >= 0 && at.xPx <= size.widthPx && at.yPx <= size.heightPx;
  if (!isSeen) return null;
  const left = Math.max(EDGE_PX, Math.min(size.widthPx - width - EDGE_PX, at.xPx - width / 2));
  const below = at.yPx + GAP_PX;
  const top = below + targetPx + EDGE_PX <= size.heightPx ? below : at.yPx - GAP_PX - targetPx;
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
