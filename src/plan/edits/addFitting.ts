import { isIdUsed } from '../ids.ts';
import { type Fitting, MAX_ITEMS, type Plan } from '../schema.ts';
import { acceptFitting } from './accept.ts';

/** Adds a fitting to one of the plan's sheets. */
export function addFitting(plan: Plan, fitting: Fitting): Plan {
  const accepted = acceptFitting(fitting, plan.settings);
  if (accepted === null || plan.fittings.length >= MAX_ITEMS || isIdUsed(plan, accepted.id)) return plan;
  const sheets = accepted.kind === 'continuation' ? [accepted.sheetId, accepted.other.sheetId] : [accepted.sheetId];
  if (!sheets.every((sheetId) => plan.sheets.some(({ id }) => id === sheetId))) return plan;
  return { ...plan, fittings: [...plan.fittings, accepted] };
}
