import { mirrorSheet } from '../../plan/edits/mirrorSheet.ts';
import { commit } from '../edit.ts';
import type { Act } from './act.ts';

/** Turns the vehicle from left- to right-hand drive, or back, with everything on it. */
export const mirror: Act = {
  id: 'mirror',
  keys: [],
  allowed: (state) => state.plan.sheets.length > 0,
  run: (desk) => {
    commit(desk, 'mirror', (before) => before.sheets.reduce((plan, { id }) => mirrorSheet(plan, id), before));
  },
};
