/** Any value that a schema of the plan admits, its bounds among them: a field that is added is tried without a word. */
import fc from 'fast-check';
import { KNOWN_GAUGES } from '../../src/plan/gauges.ts';

/** What this needs to know of a schema: it is read as plain data, since each kind of schema has a type of its own. */
interface Schema {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly options?: readonly unknown[];
  readonly wrapped?: Schema;
  readonly item?: Schema;
  readonly literal?: unknown;
  readonly pipe?: readonly { readonly type: string; readonly requirement?: unknown }[];
}

/** Lists are kept short: what matters is what is in them. */
const MOST_IN_LIST = 4;

const TEXTS: Readonly<Record<string, fc.Arbitrary<string>>> = {
  name: fc.constantFrom('', 'Name'),
  nearerImpossible: fc.constantFrom('', 'A wing is in the way'),
};
const anyGauge = fc.constantFrom(...KNOWN_GAUGES);

/** The limit that a schema sets by an action of that type. */
function limitOf({ pipe = [] }: Schema, type: string, otherwise: number): number {
  const requirement = pipe.find((action) => action.type === type)?.requirement;
  return typeof requirement === 'number' ? requirement : otherwise;
}

function anyNumber(schema: Schema): fc.Arbitrary<number> {
  const min = limitOf(schema, 'min_value', 0);
  const max = limitOf(schema, 'max_value', 1);
  if (schema.pipe?.some(({ type }) => type === 'integer')) {
    return fc.oneof(fc.constantFrom(min, max), fc.integer({ min, max }));
  }
  const middle = min > 0 ? Math.sqrt(min * max) : (min + max) / 2;
  return fc.oneof(
    fc.constantFrom(min, middle, max),
    fc.double({ min, max, noNaN: true }).map((value) => value + 0),
  );
}

/** Any value of a schema; `key` tells which texts a string is of. Ids and references are for the caller to set. */
export function anyValue(schema: Schema, key = ''): fc.Arbitrary<unknown> {
  const { type, entries = {}, options = [], wrapped, item, literal } = schema;
  switch (type) {
    case 'strict_object':
      return fc.record(
        Object.fromEntries(
          Object.entries(entries)
            .filter(([, entry]) => entry.type !== 'exact_optional')
            .map(([name, entry]) => [name, anyValue(entry, name)]),
        ),
      );
    case 'nullable':
      return wrapped === undefined ? fc.constant(null) : fc.option(anyValue(wrapped, key), { freq: 3 });
    case 'array': {
      const minLength = limitOf(schema, 'min_length', 0);
      const maxLength = Math.min(limitOf(schema, 'max_length', MOST_IN_LIST), Math.max(minLength, MOST_IN_LIST));
      return item === undefined ? fc.constant([]) : fc.array(anyValue(item, key), { minLength, maxLength });
    }
    case 'union':
    case 'variant':
      return fc.oneof(...(options as readonly Schema[]).map((option) => anyValue(option, key)));
    case 'picklist':
      return fc.constantFrom(...options);
    case 'literal':
      return fc.constant(literal);
    case 'number':
      return anyNumber(schema);
    case 'boolean':
      return fc.boolean();
    case 'string':
      return TEXTS[key] ?? anyGauge;
    default:
      throw new Error(`No values are made for a schema of type ${type}`);
  }
}

/** The usual part with a few of its fields, one in `rarity`, at any value that the schema admits. */
export function varied<T extends object>(
  usual: T,
  entries: Readonly<Record<string, Schema>>,
  rarity = 6,
): fc.Arbitrary<T> {
  const fields = Object.entries(usual).map(([key, value]) => {
    const schema = entries[key];
    const any = schema === undefined ? fc.constant(value) : anyValue(schema, key);
    return [key, fc.oneof({ weight: rarity - 1, arbitrary: fc.constant(value) }, { weight: 1, arbitrary: any })];
  });
  return fc.record(Object.fromEntries(fields)) as fc.Arbitrary<T>;
}
