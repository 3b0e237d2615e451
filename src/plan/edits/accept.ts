/**
 * What every edit ends with: the changed part is rounded and held against the schema and the rules that a file is held
 * against. What would not open again is refused, by giving back the very plan that came in.
 */
import * as v from 'valibot';
import { isKnownGauge } from '../gauges.ts';
import { isToldFamily, linksOf } from '../links.ts';
import { roundFitting, roundPoint, roundRun, roundSheet } from '../round.ts';
import { placeOn } from '../runs.ts';
import {
  type Fitting,
  fittingSchema,
  type Plan,
  type Point,
  pointSchema,
  type Run,
  runSchema,
  type Settings,
  type Sheet,
  sheetSchema,
} from '../schema.ts';
import { terminalsOf } from '../terminals.ts';

/** The fitting as it may stand in a plan of those settings, or null. */
export function acceptFitting(fitting: unknown, settings: Settings): Fitting | null {
  const { success, output } = v.safeParse(fittingSchema, fitting);
  if (!success) return null;
  const gauges = [output.takes, output.kind === 'block' ? output.outputsTake : null];
  if (gauges.some((gauge) => gauge !== null && !isKnownGauge(gauge))) return null;
  if (!linksOf(output).every(({ link }) => isToldFamily(settings, link.family))) return null;
  if (output.kind === 'continuation' && output.other.sheetId === output.sheetId) return null;
  const terminals = terminalsOf(output);
  return new Set(terminals).size === terminals.length ? checked(fittingSchema, roundFitting(output)) : null;
}

/** The run as it may stand in a plan that holds those fittings, or null. */
export function acceptRun(run: unknown, fittings: readonly Fitting[]): Run | null {
  const { success, output } = v.safeParse(runSchema, run);
  if (!success) return null;
  const { from, to, sheetId, conductor } = output;
  if (conductor.size !== 'auto' && !isKnownGauge(conductor.size)) return null;
  if (from.fittingId === to.fittingId && from.terminal === to.terminal) return null;
  const endsHold = [from, to].every((end) => {
    const fitting = fittings.find(({ id }) => id === end.fittingId);
    return fitting !== undefined && placeOn(fitting, sheetId) !== null && terminalsOf(fitting).includes(end.terminal);
  });
  return endsHold ? checked(runSchema, roundRun(output)) : null;
}

/** The sheet as it may stand in a plan, or null. */
export function acceptSheet(sheet: unknown): Sheet | null {
  const { success, output } = v.safeParse(sheetSchema, sheet);
  return success ? checked(sheetSchema, roundSheet(output)) : null;
}

/** The plan with that fitting in place of the one it was; the same plan when it is refused or no different. */
export function withFitting(plan: Plan, before: Fitting, after: unknown): Plan {
  const fitting = acceptFitting(after, plan.settings);
  if (fitting === null || isSame(before, fitting)) return plan;
  return { ...plan, fittings: plan.fittings.map((other) => (other === before ? fitting : other)) };
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
  return { ...plan, fittings: plan.fittings.map((other) => (other === before ? after : other)) };
}

/** The plan with that run in place of the one it was; the same plan when it is refused or no different. */
export function withRun(plan: Plan, before: Run, after: unknown): Plan {
  // a finger that drags asks with every frame, mostly about a run that stays as it is
  if (isSame(before, after)) return plan;
  const run = acceptRun(after, plan.fittings);
  if (run === null || isSame(before, run)) return plan;
  return { ...plan, runs: plan.runs.map((other) => (other === before ? run : other)) };
}

/** The plan with that sheet in place of the one it was; the same plan when it is refused or no different. */
export function withSheet(plan: Plan, before: Sheet, after: unknown): Plan {
  const sheet = acceptSheet(after);
  if (sheet === null || isSame(before, sheet)) return plan;
  return { ...plan, sheets: plan.sheets.map((other) => (other === before ? sheet : other)) };
}

/** Whether two parts of a plan say the same. Keys stand in the schema's order in both. */
export const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Rounding may carry a value over a bound (a length of 0.04 mm is none), so the rounded part is held again. */
function checked<T>(schema: v.GenericSchema<unknown, T>, part: T): T | null {
  return v.is(schema, part) ? part : null;
}
