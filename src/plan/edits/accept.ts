/**
 * What every edit ends with: the changed part is rounded and held against the schema and the rules that a file is held
 * against.
 */
import * as v from 'valibot';
import { isKnownGauge } from '../gauges.ts';
import { isToldFamily, linksOf } from '../links.ts';
import { roundFitting, roundRun, roundSheet } from '../round.ts';
import { placeOn } from '../runs.ts';
import { type Fitting, fittingSchema, type Run, runSchema, type Settings, type Sheet, sheetSchema } from '../schema.ts';
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

/** Rounding may carry a value over a bound (a length of 0.04 mm is none), so the rounded part is held again. */
function checked<T>(schema: v.GenericSchema<unknown, T>, part: T): T | null {
  return v.is(schema, part) ? part : null;
}
