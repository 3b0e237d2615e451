/** The plans that the properties are tried on: that nothing a plan may hold is left out of them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linksOf } from '../../src/plan/links.ts';
import { fittingSchema, runSchema } from '../../src/plan/schema.ts';
import { anyPlan } from './anyPlan.ts';

describe('any plan', () => {
  const plans = fc.sample(anyPlan, { numRuns: 3000, seed: 1 });
  const fittings = plans.flatMap((plan) => plan.fittings);
  const runs = plans.flatMap((plan) => plan.runs);

  it('holds every kind of fitting and of run, on every kind of outline, at 12 and 24 V', () => {
    expect(new Set(fittings.map(({ kind }) => kind)).size).toBe(fittingSchema.options.length);
    expect(new Set(runs.map(({ kind }) => kind)).size).toBe(runSchema.entries.kind.options.length);
    expect(new Set(plans.map(({ settings }) => settings.systemV))).toEqual(new Set([12, 24]));
    expect(new Set(plans.map(({ sheets }) => sheets[0]?.outline.kind))).toEqual(new Set(['vehicle', 'own', 'bench']));
    expect(plans.some(({ areas }) => areas.length > 0)).toBe(true);
  });

  it('has every field of a fitting and of a run at more than one value', () => {
    const values = new Map<string, Set<string>>();
    const see = (owner: string, part: object) => {
      for (const [key, value] of Object.entries(part)) {
        const field = `${owner}.${key}`;
        values.set(field, (values.get(field) ?? new Set()).add(JSON.stringify(value)));
      }
    };
    for (const fitting of fittings) see(fitting.kind, fitting);
    for (const run of runs) see('run', run);
    for (const { conductor } of runs) see('conductor', conductor);
    for (const { settings } of plans) see('settings', settings);
    const always = [...values].filter(([, seen]) => seen.size === 1).map(([field]) => field);
    expect(always.filter((field) => !field.endsWith('.kind'))).toEqual([]);
  });

  it('has links of own families, on posts, in blocks, fuses and breakers', () => {
    const own = fittings.filter((fitting) => linksOf(fitting).some(({ link }) => link.family.startsWith('own')));
    expect(new Set(own.map(({ kind }) => kind))).toEqual(new Set(['battery', 'block', 'breaker', 'fuse']));
    expect(new Set(plans.flatMap(({ settings }) => settings.ownLinks.map(({ seat }) => seat))).size).toBe(3);
  });
});
