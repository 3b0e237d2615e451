import type { PaneSize } from '../desk/camera.ts';
import { halfPlatePx } from '../drawing/fittings.ts';
import { fittingById } from '../plan/byId.ts';
import type { Plan } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { shownName } from '../words/names.ts';
import type { StateNamed } from './tools/state.ts';
import { isTaken } from './tools/terminals.ts';

const TAB_WIDTH_PX = 168;
const GAP_PX = 8;

/** The terminals of a fitting as buttons beside it: which one is meant is never guessed. */
export function Tabs(props: {
  state: StateNamed<'run.pickingTerminal' | 'move.pickingTerminal'>;
  plan: Plan;
  at: { xPx: number; yPx: number };
  pxPerM: number;
  size: PaneSize;
  targetPx: number;
  textScale: number;
  onChoose: (terminal: string) => void;
}) {
  const { state, plan, at, size, targetPx, textScale, onChoose } = props;
  const widthPx = TAB_WIDTH_PX * textScale;
  const fitting = fittingById(plan, state.fittingId);
  if (fitting === undefined) return null;
  const rows = state.terminals.length;
  const heightPx = Math.min(size.heightPx - 2 * GAP_PX, rows * (targetPx + GAP_PX) - GAP_PX);
  const beside = halfPlatePx(props.pxPerM) + 14;
  const isRight = at.xPx + beside + widthPx <= size.widthPx - GAP_PX;
  const wishedPx = isRight ? at.xPx + beside : at.xPx - beside - widthPx;
  const leftPx = Math.max(GAP_PX, Math.min(size.widthPx - widthPx - GAP_PX, wishedPx));
  const topPx = Math.max(GAP_PX, Math.min(size.heightPx - heightPx - GAP_PX, at.yPx - heightPx / 2));
  return (
    <fieldset
      className="sketch-tabs"
      aria-label={words.sketch.drawing.terminalsOf(shownName(plan, fitting))}
      style={{ left: leftPx, top: topPx, width: widthPx, maxHeight: heightPx }}
    >
      {state.terminals.map((ref) => (
        <button key={ref.terminal} type="button" onClick={() => onChoose(ref.terminal)}>
          <span>{words.sketch.tab(ref.terminal, words.fittings.terminal(ref.terminal))}</span>
          {isTaken(plan, ref) && <small>{words.sketch.drawing.taken}</small>}
        </button>
      ))}
    </fieldset>
  );
}
