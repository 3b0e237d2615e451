import { fittingById } from './byId.ts';
import type { Fitting, Plan, Point, Run, TerminalRef } from './schema.ts';

/** Where a fitting stands on a sheet; null when it is not on that one. A continuation point is on two. */
export function placeOn(fitting: Fitting, sheetId: string): Point | null {
  if (fitting.sheetId === sheetId) return fitting.at;
  return fitting.kind === 'continuation' && fitting.other.sheetId === sheetId ? fitting.other.at : null;
}

/** The run as drawn: from its first fitting, by its bends, to its last. Ends that are gone, or not on its sheet, are left out. */
export function runPoints(plan: Plan, run: Run): Point[] {
  const placeOf = ({ fittingId }: TerminalRef): Point[] => {
    const fitting = fittingById(plan, fittingId);
    const place = fitting === undefined ? null : placeOn(fitting, run.sheetId);
    return place === null ? [] : [place];
  };
  return [...placeOf(run.from), ...run.bends, ...placeOf(run.to)];
}

/** The sheet on which both fittings stand, so that a run can join them; null when there is none. The first's own goes first. */
export function sharedSheet(one: Fitting, other: Fitting): string | null {
  const sheets = one.kind === 'continuation' ? [one.sheetId, one.other.sheetId] : [one.sheetId];
  return sheets.find((sheetId) => placeOn(other, sheetId) !== null) ?? null;
}
