import { isIdUsed } from '../ids.ts';
import { MAX_SHEETS, type Plan, type Sheet } from '../schema.ts';
import { acceptSheet } from './accept.ts';

/** Adds a sheet behind the others; nothing is on it yet. */
export function addSheet(plan: Plan, sheet: Sheet): Plan {
  const accepted = acceptSheet(sheet);
  if (accepted === null || plan.sheets.length >= MAX_SHEETS || isIdUsed(plan, accepted.id)) return plan;
  return { ...plan, sheets: [...plan.sheets, accepted] };
}
