/**
 * A plan with one part in place of another. What would not open again is refused, by giving back the very plan that came
 * in.
 */
import * as v from 'valibot';
import { renewed } from '../renewed.ts';
import { roundPoint } from '../round.ts';
import { type Fitting, type Plan, type Point, pointSchema, type Run, type Sheet } from '../schema.ts';
import { acceptFitting, acceptRun, acceptSheet } from './accept.ts';

/** The plan with that fitting in place of the one it was; the same plan when it is refused or no different. */
export function withFitting(plan: Plan, before: Fitting, after: unknown): Plan {
  const fitting = acceptFitting(after, plan.settings);
  if (fitting === null || isSame(before, fitting)) return plan;
  return { ...plan, fittings: renewed(plan.fittings, before, fitting) };
}

/**
 * The plan with a fitting at another place of its sheet, or of the other sheet that a continuation point stands on; the
 * same plan when the place is refused or no other. Nothing else of a fitting hangs on where it stands, so that the place
 * alone is held against the schema: a finger that drags asks with every frame.
 */
export function withPlace(plan: Plan, before: Fitting, at: Point, sheetId?: string): Plan {
  const rounded = roundPoint(at);
  if (!v.is(pointSchema, rounded)) return plan;
  const isOther = before.kind === 'continuation' && before.other.sheetId === sheetId;
  const { xM, yM } = isOther ? before.other.at : before.at;
  if (rounded.xM === xM && rounded.yM === yM) return plan;
  const after = isOther ? { ...before, other: { ...before.other, at: rounded } } : { ...before, at: rounded };
  return { ...plan, fittings: renewed(plan.fittings, before, after) };
}

/** The plan with that run in place of the one it was; the same plan when it is refused or no different. */
export function withRun(plan: Plan, before: Run, after: unknown): Plan {
  // a finger that drags asks with every frame, mostly about a run that stays as it is
  if (isSame(before, after)) return plan;
  const run = acceptRun(after, plan.fittings);
  if (run === null || isSame(before, run)) return plan;
  return { ...plan, runs: renewed(plan.runs, before, run) };
}

/** The plan with that sheet in place of the one it was; the same plan when it is refused or no different. */
export function withSheet(plan: Plan, before: Sheet, after: unknown): Plan {
  const sheet = acceptSheet(after);
  if (sheet === null || isSame(before, sheet)) return plan;
  return { ...plan, sheets: renewed(plan.sheets, before, sheet) };
}

/** Whether two parts of a plan say the same. Keys stand in the schema's order in both. */
export const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
