import { changeFitting } from '../../plan/edits/changeFitting.ts';
import { changeRun } from '../../plan/edits/changeRun.ts';
import { commit } from '../edit.ts';
import { isLocked } from '../selection.ts';
import { wholePlan } from '../whole.ts';
import type { Act } from './act.ts';

/** Locks the selected fitting or run, so that a sleeve moves nothing; or frees it again. */
export const lockSelected: Act = {
  id: 'lock',
  keys: ['l'],
  allowed: (state) => state.selection !== null,
  run: (desk) => {
    const { selection, ...state } = desk.getState();
    if (selection === null) return;
    const locked = !isLocked(wholePlan(state), selection);
    const change = selection.kind === 'fitting' ? changeFitting : changeRun;
    commit(desk, 'lock', (before) => change(before, selection.id, { locked }));
  },
};
