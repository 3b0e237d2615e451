import { fittingById, runById } from '../byId.ts';
import type { Input, Plan } from '../schema.ts';
import { changeSettings } from './changeSettings.ts';
import { isSame, withFitting, withRun, withSheet } from './replaced.ts';

type Fields = { readonly [key: string]: unknown };

/**
 * Sets a value that may be assumed, and where it comes from. `path` is 'settings.bodyOhm', or the id of a fitting, run
 * or sheet and its field: '<batteryId>.strap.lengthM', '<runId>.conductor.insulationC'. A path that leads nowhere, or a
 * value out of bounds, changes nothing. The source stays only with the assumed value it speaks of.
 */
export function setInput(
  plan: Plan,
  path: string,
  value: number | string | boolean,
  origin: Input<unknown>['origin'],
): Plan {
  const [owner = '', ...fields] = path.split('.');
  const write = <T extends object>(part: T): T => withInput(part, fields, value, origin);
  if (owner === 'settings') return changeSettings(plan, write(plan.settings));
  const fitting = fittingById(plan, owner);
  if (fitting !== undefined) return withFitting(plan, fitting, write(fitting));
  const run = runById(plan, owner);
  if (run !== undefined) return withRun(plan, run, write(run));
  const sheet = plan.sheets.find(({ id }) => id === owner);
  return sheet === undefined ? plan : withSheet(plan, sheet, write(sheet));
}

/** A copy with the input at the end of the path replaced; unchanged where the path is not the part's own. */
function withInput<T extends object>(part: T, [field, ...rest]: string[], value: unknown, origin: string): T {
  if (field === undefined || !Object.hasOwn(part, field)) return part;
  const before = (part as Fields)[field];
  if (rest.length === 0) return { ...part, [field]: inputAfter(before, value, origin) };
  return isObject(before) ? { ...part, [field]: withInput(before, rest, value, origin) } : part;
}

function inputAfter(before: unknown, value: unknown, origin: string): Fields {
  const keepsSource =
    isObject(before) && origin === 'assumed' && before.origin === origin && isSame(before.value, value);
  return keepsSource ? before : { value, origin };
}

const isObject = (value: unknown): value is Fields => typeof value === 'object' && value !== null;
