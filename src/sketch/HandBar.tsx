import type { ReactNode } from 'react';
import type { ConnectRefusal } from '../desk/connect.ts';
import { words } from '../words/index.ts';
import type { HandState } from './tools/state.ts';

/** What to do next, where that is not plain to see. */
function hintOf(handName: HandState['name']): string | null {
  const { drawing } = words.sketch;
  switch (handName) {
    case 'run.idle':
      return drawing.startHint;
    case 'run.drawing':
    case 'run.pickingTerminal':
      return drawing.goOnHint;
    case 'place.aiming':
      return drawing.aimHint;
    case 'move.draggingEnd':
      return drawing.endHint;
    case 'move.pickingTerminal':
      return drawing.pickHint;
    default:
      return null;
  }
}

/** What can be done with the run being drawn, without a keyboard: one bend back, or not at all. */
export function HandBar(props: {
  handName: HandState['name'];
  refusal: ConnectRefusal | null;
  onBack: () => void;
  onDrop: () => void;
  /** Where the run can go on, beside this sheet. */
  continues: ReactNode;
}) {
  const { handName, refusal, onBack, onDrop, continues } = props;
  const { drawing } = words.sketch;
  const isDrawing = handName === 'run.drawing' || handName === 'run.pickingTerminal';
  const isPicking = handName === 'move.pickingTerminal';
  const hint = refusal === null ? hintOf(handName) : words.refusals[refusal];
  if (hint === null) return null;
  return (
    <div className="sketch-hand">
      <p role="status">{hint}</p>
      {handName === 'run.drawing' && continues}
      {isDrawing && (
        <button type="button" onClick={onBack}>
          {drawing.back}
        </button>
      )}
      {(isDrawing || isPicking) && (
        <button type="button" onClick={onDrop}>
          {drawing.cancel}
        </button>
      )}
    </div>
  );
}
