import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planJsonSchemaText } from '../../src/cli/planJsonSchema.ts';
import { sampleVan } from './support/samplePlan.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Node = { [key: string]: Json };

const isNode = (value: Json | undefined): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const schema: Node = JSON.parse(planJsonSchemaText());

/** The keywords the published schema uses, checked by themselves: enough to hold a plan against it. */
function fits(value: Json, node: Node): boolean {
  const ref = node.$ref;
  if (typeof ref === 'string') {
    const target = isNode(schema.$defs) ? schema.$defs[ref.replace('#/$defs/', '')] : undefined;
    return isNode(target) && fits(value, target);
  }
  const {
    const: only,
    enum: some,
    type,
    anyOf,
    oneOf,
    minimum,
    maximum,
    pattern,
    maxLength,
    items,
    minItems,
    maxItems,
  } = node;
  if (only !== undefined && value !== only) return false;
  if (Array.isArray(some) && !some.includes(value)) return false;
  const matches = (options: Json[]) => options.filter((option) => isNode(option) && fits(value, option)).length;
  if (Array.isArray(anyOf) && matches(anyOf) === 0) return false;
  if (Array.isArray(oneOf) && matches(oneOf) !== 1) return false;
  const actual = value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value;
  const isInteger = type === 'integer' && Number.isInteger(value);
  if (type !== undefined && type !== actual && !isInteger) return false;
  if (typeof value === 'number') {
    return !(typeof minimum === 'number' && value < minimum) && !(typeof maximum === 'number' && value > maximum);
  }
  if (typeof value === 'string') {
    if (typeof maxLength === 'number' && value.length > maxLength) return false;
    return typeof pattern !== 'string' || new RegExp(pattern, 'u').test(value);
  }
  if (Array.isArray(value)) {
    if (typeof minItems === 'number' && value.length < minItems) return false;
    if (typeof maxItems === 'number' && value.length > maxItems) return false;
    return !isNode(items) || value.every((item) => fits(item, items));
  }
  if (isNode(value) && isNode(node.properties)) {
    const { properties, required } = node;
    if (Array.isArray(required) && required.some((key) => !Object.hasOwn(value, String(key)))) return false;
    return Object.entries(value).every(([key, part]) => {
      const property = Object.hasOwn(properties, key) ? properties[key] : undefined;
      return isNode(property) ? fits(part, property) : node.additionalProperties !== false;
    });
  }
  return true;
}

describe('public/plan.schema.json', () => {
  it('is what the schema says today (npm run schema writes it anew)', () => {
    const published = readFileSync(new URL('../../public/plan.schema.json', import.meta.url), 'utf8');
    expect(published).toBe(planJsonSchemaText());
  });

  it('uses no keyword that this test does not read', () => {
    const known = [
      ...['$ref', 'const', 'enum', 'type', 'anyOf', 'oneOf', 'minimum', 'maximum', 'pattern', 'maxLength'],
      ...['items', 'minItems', 'maxItems', 'properties', 'required', 'additionalProperties'],
    ];
    const unread = new Set<string>();
    const walk = (node: Json): void => {
      if (Array.isArray(node)) {
        for (const part of node) walk(part);
        return;
      }
      if (!isNode(node)) return;
      for (const [key, value] of Object.entries(node)) {
        if (!known.includes(key)) unread.add(key);
        if (key === 'properties' && isNode(value)) Object.values(value).forEach(walk);
        else if (['items', 'anyOf', 'oneOf'].includes(key)) walk(value);
      }
    };
    const { $schema, title, description, $defs, ...top } = schema;
    for (const node of [top, ...Object.values(isNode($defs) ? $defs : {})]) walk(node);
    expect([...unread]).toEqual([]);
    expect([$schema, title, typeof description]).toEqual([
      'https://json-schema.org/draft/2020-12/schema',
      'Feedrun plan',
      'string',
    ]);
  });

  it('takes every kept file of its version, and the sample', () => {
    const folder = new URL('../fixtures/plans/v4/', import.meta.url);
    const names = readdirSync(folder);
    expect(names.length).toBeGreaterThanOrEqual(3);
    for (const name of names) {
      expect(fits(JSON.parse(readFileSync(new URL(name, folder), 'utf8')), schema), name).toBe(true);
    }
    expect(fits(sampleVan() as unknown as Json, schema)).toBe(true);
  });

  it.each([
    ['another version', { version: 1 }],
    ['a key that no plan has', { author: 'x' }],
    ['no sheet', { sheets: [] }],
    ['a broken name', { name: 'x\ud800' }],
    ['a name too long', { name: 'x'.repeat(201) }],
    ['an unknown fitting', { fittings: [{ ...sampleVan().fittings[0], kind: 'transformer' }] }],
    ['a place far off', { fittings: [{ ...sampleVan().fittings[1], at: { xM: 101, yM: 0 } }] }],
    ['a taped length of nothing', { runs: [{ ...sampleVan().runs[0], tapedM: 0 }] }],
    ['a bundle of none', { runs: [{ ...sampleVan().runs[0], bundled: 0 }] }],
    ['half a cable in a bundle', { runs: [{ ...sampleVan().runs[0], bundled: 1.5 }] }],
    ['an own family of a name of its own', { settings: { ...sampleVan().settings, linkFamilies: ['own7'] } }],
    ['a size that is none', { settings: { ...sampleVan().settings, stock: ['four'] } }],
  ])('refuses %s', (_, change) => {
    expect(fits({ ...sampleVan(), ...change } as unknown as Json, schema)).toBe(false);
  });
});
