import { useStore } from 'zustand';
import { handMove } from '../desk/acts/hand.ts';
import { runAct } from '../desk/acts/index.ts';
import type { Desk } from '../desk/desk.ts';
import { words } from '../words/index.ts';
import { ContinueOn } from './ContinueOn.tsx';
import type { Table } from './table.ts';
import type { HandState } from './tools/state.ts';

/** In which state the hand is; moving the sheet meanwhile changes nothing of it. */
export const restingName = (state: HandState): HandState['name'] =>
  state.name === 'panning' ? state.back.name : state.name;

/** What to do next, where that is not plain to see. */
function useHint(desk: Desk, handName: HandState['name']): string | null {
  const held = useStore(desk, ({ hand }) => (hand.way === 'place' ? hand.fitting : null));
  const { drawing } = words.sketch;
  switch (handName) {
    case 'run.idle':
      return drawing.startHint;
    case 'run.drawing':
      return drawing.goOnHint;
    case 'run.pickingTerminal':
    case 'move.pickingTerminal':
      return drawing.pickHint;
    case 'place.idle':
      return held === null ? null : drawing.placeHint(words.fittings.kinds[held]);
    case 'place.aiming':
      return drawing.aimHint;
    case 'move.draggingEnd':
      return drawing.endHint;
    default:
      return null;
  }
}

/** What the hand is about, and without a keyboard: one bend back, not at all, or the tool put away. */
export function HandBar({ table }: { table: Table }) {
  const { desk, hand, seen } = table;
  const handName = useStore(seen, ({ state }) => restingName(state));
  const refusal = useStore(seen, (view) => view.refusal);
  const own = useHint(desk, handName);
  const { drawing } = words.sketch;
  const isDrawing = handName === 'run.drawing' || handName === 'run.pickingTerminal';
  const isPicking = handName === 'move.pickingTerminal';
  const hint = refusal === null ? own : words.refusals[refusal];
  if (hint === null) return null;
  const putAway = () => void runAct(desk, handMove);
  return (
    <div className="sketch-hand">
      <p role="status">{hint}</p>
      <div className="sketch-acts">
        {handName === 'run.drawing' && <ContinueOn table={table} />}
        {isDrawing && (
          <button type="button" onClick={() => hand.tell({ kind: 'back' })}>
            {drawing.back}
          </button>
        )}
        {(isDrawing || isPicking) && (
          <button type="button" onClick={() => hand.tell({ kind: 'drop' })}>
            {drawing.cancel}
          </button>
        )}
        {handName === 'place.idle' && (
          <button type="button" onClick={putAway}>
            {drawing.cancel}
          </button>
        )}
        {handName === 'run.idle' && (
          <button type="button" onClick={putAway}>
            {drawing.done}
          </button>
        )}
      </div>
    </div>
  );
}
