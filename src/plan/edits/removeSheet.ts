import { placeOn } from '../runs.ts';
import type { Plan } from '../schema.ts';

/**
 * Takes a sheet out with all that is on it. A point where a cable goes on from it to another sheet goes too, with the
 * runs that end there on either sheet. The last sheet stays, and so does one that would take something locked with it.
 */
export function removeSheet(plan: Plan, sheetId: string): Plan {
  if (plan.sheets.length < 2 || !plan.sheets.some(({ id }) => id === sheetId)) return plan;
  const fittings = plan.fittings.filter((fitting) => placeOn(fitting, sheetId) !== null);
  const gone = new Set(fittings.map(({ id }) => id));
  const runs = plan.runs.filter(
    (run) => run.sheetId === sheetId || gone.has(run.from.fittingId) || gone.has(run.to.fittingId),
  );
  if ([...fittings, ...runs].some(({ locked }) => locked)) return plan;
  const without = <T extends { sheetId: string }>(items: T[]): T[] => items.filter((item) => item.sheetId !== sheetId);
  return {
    ...plan,
    sheets: plan.sheets.filter(({ id }) => id !== sheetId),
    fittings: plan.fittings.filter(({ id }) => !gone.has(id)),
    runs: plan.runs.filter((run) => !runs.includes(run)),
    areas: without(plan.areas),
    ties: without(plan.ties),
    mounts: without(plan.mounts),
    pictures: without(plan.pictures),
  };
}
