import type { Desk } from '../desk.ts';
import { select, selectables } from '../selection.ts';
import { wholePlan } from '../whole.ts';
import type { Act } from './act.ts';

function selectAway(desk: Desk, by: 1 | -1): void {
  const { selection, ...state } = desk.getState();
  const all = selectables(wholePlan(state));
  const here = all.findIndex(({ id }) => id === selection?.id);
  const next = here === -1 && by === -1 ? all.length - 1 : (here + by + all.length) % all.length;
  select(desk, all[next] ?? null);
}

export const selectNext: Act = {
  id: 'selectNext',
  keys: ['n'],
  repeats: true,
  allowed: (state) => selectables(wholePlan(state)).length > 0,
  run: (desk) => selectAway(desk, 1),
};

export const selectPrevious: Act = {
  id: 'selectPrevious',
  keys: ['Shift+n'],
  repeats: true,
  allowed: (state) => selectables(wholePlan(state)).length > 0,
  run: (desk) => selectAway(desk, -1),
};
