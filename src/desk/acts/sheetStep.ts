import type { Desk } from '../desk.ts';
import { openSheet } from '../openSheet.ts';
import { goToSheet } from '../sheets.ts';
import type { Act } from './act.ts';

function step(desk: Desk, by: 1 | -1): void {
  const state = desk.getState();
  const { sheets } = state.plan;
  const here = sheets.findIndex(({ id }) => id === openSheet(state).id);
  const next = sheets[(here + by + sheets.length) % sheets.length];
  if (next !== undefined) goToSheet(desk, next.id);
}

const stepAct = (id: string, key: string, by: 1 | -1): Act => ({
  id,
  keys: [key],
  allowed: ({ plan }) => plan.sheets.length > 1,
  run: (desk) => step(desk, by),
});

export const nextSheet = stepAct('nextSheet', 'PageDown', 1);
export const previousSheet = stepAct('previousSheet', 'PageUp', -1);
