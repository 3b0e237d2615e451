import type { Plan, Sheet } from '../schema.ts';
import { withSheet } from './replaced.ts';

/** Changes a sheet's name, outline, scale or hand of drive, and moves nothing on it: see `mirrorSheet`. */
export function changeSheet(plan: Plan, sheetId: string, patch: Partial<Omit<Sheet, 'id'>>): Plan {
  const sheet = plan.sheets.find(({ id }) => id === sheetId);
  return sheet === undefined ? plan : withSheet(plan, sheet, { ...sheet, ...patch, id: sheetId });
}
