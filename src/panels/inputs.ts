/** Bounds of what can be typed, read from the plan's schema: a field refuses what a file would be refused for. */
import { fittingById, runById } from '../plan/byId.ts';
import { fittingSchema, type Plan, runSchema, settingsSchema, sheetSchema } from '../plan/schema.ts';

export interface Bounds {
  min: number;
  max: number;
}

/** Insulation classes a plan may name, degC. */
export const INSULATION_CLASSES = [60, 75, 80, 90, 105, 125, 200] as const;

const ANY: Bounds = { min: -1e6, max: 1e6 };

type Fields = { readonly [key: string]: unknown };
const isObject = (part: unknown): part is Fields => typeof part === 'object' && part !== null;
/** What a part of a schema holds under a name. */
const held = (part: unknown, key: string): unknown => (isObject(part) ? part[key] : undefined);
const listed = (part: unknown, key: string): readonly unknown[] => {
  const list = held(part, key);
  return Array.isArray(list) ? list : [];
};

/** The schema of a field: through what may be null, and through a list to its members. */
function fieldOf(part: unknown, name: string): unknown {
  const inside = held(part, 'wrapped') ?? held(part, 'item');
  return inside === undefined ? held(held(part, 'entries'), name) : fieldOf(inside, name);
}

/** The bounds of the number a field holds: itself, in an input, in a list, or beside a word such as 'auto'. */
function boundsOf(part: unknown): Bounds | null {
  const limit = (type: string) =>
    held(
      listed(part, 'pipe').find((step) => held(step, 'type') === type),
      'requirement',
    );
  const [min, max] = [limit('min_value'), limit('max_value')];
  if (typeof min === 'number' && typeof max === 'number') return { min, max };
  const inside = [held(part, 'wrapped'), held(held(part, 'entries'), 'value'), held(part, 'item')];
  for (const one of [...inside, ...listed(part, 'options')]) {
    const found = one === undefined ? null : boundsOf(one);
    if (found !== null) return found;
  }
  return null;
}

function schemaOf(part: string): unknown {
  if (part === 'settings') return settingsSchema;
  if (part === 'run') return runSchema;
  if (part === 'sheet') return sheetSchema;
  return fittingSchema.options.find(({ entries }) => entries.kind.literal === part);
}

/** Bounds by part and field: 'settings.bodyOhm', 'alternator.ratedA', 'battery.strap.areaMm2', 'run.slackPercent'. */
export function inputBounds(path: string): Bounds {
  const [part = '', ...fields] = path.split('.');
  return boundsOf(fields.reduce(fieldOf, schemaOf(part))) ?? ANY;
}

/** Bounds of an input as an answer names it: '<id>.efficiency', '<id>.conductor.insulationC', 'settings.bodyOhm'. */
export function boundsIn(plan: Plan, path: string): Bounds {
  const [owner = '', ...fields] = path.split('.');
  const run = runById(plan, owner) === undefined ? undefined : 'run';
  const sheet = plan.sheets.some(({ id }) => id === owner) ? 'sheet' : undefined;
  return inputBounds([fittingById(plan, owner)?.kind ?? run ?? sheet ?? owner, ...fields].join('.'));
}

/** The same for a field of length. */
export function lengthBounds(path: string): { minM: number; maxM: number } {
  const { min, max } = inputBounds(path);
  return { minM: min, maxM: max };
}
