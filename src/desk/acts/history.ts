import { redo, undo } from '../edit.ts';
import type { Act } from './act.ts';

/** A step there is none of does nothing, so these are always allowed; a button reads the depths to show itself off. */
export const undoAct: Act = { id: 'undo', keys: ['Control+z'], repeats: true, allowed: () => true, run: undo };

export const redoAct: Act = {
  id: 'redo',
  keys: ['Shift+Control+z', 'Control+y'],
  repeats: true,
  allowed: () => true,
  run: redo,
};
