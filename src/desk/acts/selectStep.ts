import type { Desk } from '../desk.ts';
import { select, selectables } from '../selection.ts';
import type { Act } from './act.ts';

function selectAway(desk: Desk, by: 1 | -1): void {
  const { plan, selection } = desk.getState();
  const all = selectables(plan);
  const here = all.findIndex(({ id }) => id === selection?.id);
  const next = here === -1 && by === -1 ? all.length - 1 : (here + by + all.length) % all.length;
  select(desk, all[next] ?? null);
}

export const selectNext: Act = {
  id: 'selectNext',
  keys: ['n'],
  repeats: true,
  allowed: (state) => selectables(state.plan).length > 0,
  run: (desk) => selectAway(desk, 1),
};

export const selectPrevious: Act = {
  id: 'selectPrevious',
  keys: ['Shift+n'],
  repeats: true,
  allowed: (state) => selectables(state.plan).length > 0,
  run: (desk) => selectAway(desk, -1),
};
