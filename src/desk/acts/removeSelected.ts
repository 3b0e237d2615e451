import { removeBend } from '../../plan/edits/removeBend.ts';
import { conductorJoined, removeFitting } from '../../plan/edits/removeFitting.ts';
import { removeRun } from '../../plan/edits/removeRun.ts';
import type { Message } from '../desk.ts';
import { commit } from '../edit.ts';
import { refusePart } from '../proposing.ts';
import { isLocked } from '../selection.ts';
import { wholePlan } from '../whole.ts';
import type { Act } from './act.ts';

/** Deletes what is selected, at once; a short message offers to take it back. */
export const removeSelected: Act = {
  id: 'remove',
  keys: ['Delete', 'Backspace'],
  allowed: (state) => state.selection !== null && !isLocked(wholePlan(state), state.selection),
  run: (desk) => {
    const { selection, plan, proposal } = desk.getState();
    if (selection === null) return;
    const isProposed = proposal.some(({ id }) => id === selection.id);
    if (isProposed && selection.kind !== 'bend') {
      refusePart(desk, selection.id);
      return;
    }
    if (selection.kind === 'bend') {
      const edit = (before: typeof plan) => removeBend(before, selection.id, selection.index);
      commit(desk, 'removeBend', edit, { selection: { kind: 'run', id: selection.id } });
      return;
    }
    const remove = selection.kind === 'fitting' ? removeFitting : removeRun;
    const of = { plan: wholePlan(desk.getState()), id: selection.id };
    const one = selection.kind === 'fitting' ? conductorJoined(plan, selection.id) : null;
    const message: Message =
      one === null
        ? { id: 'removed', params: {}, of, undo: true }
        : { id: 'joined', params: { size: one.size }, of, undo: true };
    commit(desk, 'remove', (before) => remove(before, selection.id), { selection: null, message });
  },
};
