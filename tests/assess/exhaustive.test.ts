/** Sizes chosen against every set there is: four lots of eight sizes in a tree, three sizes in rings and with two batteries. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseSizes } from '../../src/assess/choose/choose.ts';
import { tryOut } from '../../src/assess/choose/trial.ts';
import { buildModel } from '../../src/assess/model.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { anyBlockAmp, blockFeed, tenths } from './blockFeed.ts';
import { leastOfEverySet, metal, setsOf } from './everySet.ts';
import { PlanOf } from './planOf.ts';

const isLong = process.env.FEEDRUN_LONG !== undefined;
const EIGHT = ['8', '6', '4', '2', '1', '1/0', '2/0', '4/0'];

/** A feed and three amplifiers: four lots. */
const fourLots = fc
  .record({ feedM: tenths(5, 60), amps: fc.tuple(anyBlockAmp(1200), anyBlockAmp(1200), anyBlockAmp(1200)) })
  .map(({ feedM, amps }): Plan => blockFeed({ feedM, amps, stock: EIGHT }));

const anyMesh = fc.record({
  kind: fc.constantFrom('twoBatteries', 'ring'),
  stock: fc.shuffledSubarray(['8', '4', '2', '1/0', '2/0', '4/0'], { minLength: 2, maxLength: 3 }),
  ratedW: fc.integer({ min: 100, max: 1500 }),
  regulated: fc.boolean(),
  frontA: fc.constantFrom<('auto' | number)[]>('auto', 'auto', 60, 100, 150),
  rearA: fc.constantFrom<('auto' | number)[]>('auto', 'auto', 60, 100, 150),
  nearM: tenths(2, 40),
  farM: tenths(2, 40),
});

/** Two batteries on one block, or two feeds side by side from one: the current of most cables has a choice of way. */
const meshes = anyMesh.map(({ kind, stock, ratedW, regulated, frontA, rearA, nearM, farM }): Plan => {
  const draft = new PlanOf({ stock: stock.map((size) => `sae:${size}`) })
    .battery('front')
    .fuse('f1', frontA, { zone: 'bay' })
    .fuse('f2', rearA)
    .block('block', [null])
    .amplifier('amp', { ratedW, regulated })
    .fitting('ground', 'g1')
    .run('front.positive', 'f1.in', 0.1, { zone: 'bay', size: 'sae:4/0' })
    .run('f1.out', 'block.bus', farM)
    .run('f2.out', 'block.bus', nearM)
    .run('block.out1', 'amp.supply', 0.5)
    .run('amp.ground', 'g1.body', 0.5);
  if (kind === 'ring') return draft.run('front.positive', 'f2.in', 0.3, { zone: 'bay', id: 'second' }).done();
  return draft
    .battery('rear', { zone: 'cargo', strap: null })
    .run('rear.positive', 'f2.in', 0.1, { size: 'sae:4/0' })
    .run('rear.negative', 'g1.body', 0.4)
    .done();
});

/** What is chosen for a plan, beside the least of every set. */
function beside(plan: Plan) {
  const model = buildModel(plan);
  const choice = chooseSizes(model);
  return { model, choice, least: leastOfEverySet(model) };
}

describe('the sizes chosen, against every set of sizes', () => {
  it('are of the least metal in a tree of four lots and eight sizes, 4,096 sets, and said to be', {
    timeout: 600_000,
  }, () => {
    let chosen = 0;
    fc.assert(
      fc.property(fourLots, (plan) => {
        const { model, choice, least } = beside(plan);
        expect(setsOf(model)).toBe(4096);
        expect(choice.failing.length > 0).toBe(least === null);
        if (least === null) return;
        chosen += 1;
        expect(choice.proven).toBe(true);
        expect(choice.trial?.breaches).toEqual([]);
        expect(metal(model, choice.trialSizes)).toBeCloseTo(least, 9);
      }),
      { numRuns: isLong ? 60 : 3, seed: 20260301 },
    );
    expect(chosen).toBeGreaterThan(0);
  });

  it('are of the least metal where current has a choice of way, and said to be', { timeout: 600_000 }, () => {
    let chosen = 0;
    fc.assert(
      fc.property(meshes, (plan) => {
        const { model, choice, least } = beside(plan);
        expect(model.ways.radial).toBe(false);
        expect(setsOf(model)).toBeLessThanOrEqual(512);
        expect(choice.failing.length > 0).toBe(least === null);
        if (least === null) return;
        chosen += 1;
        expect(choice.proven).toBe(true);
        expect(choice.trial?.breaches).toEqual([]);
        expect(metal(model, choice.trialSizes)).toBeCloseTo(least, 9);
      }),
      { numRuns: isLong ? 200 : 16, seed: 20260302 },
    );
    expect(chosen).toBeGreaterThan(3);
  });

  it('name, for every lot, a rule that one size smaller breaks, and none that it does not', {
    timeout: 600_000,
  }, () => {
    fc.assert(
      fc.property(fourLots, (plan) => {
        const model = buildModel(plan);
        const { lots, failing, trialSizes, trial } = chooseSizes(model);
        if (failing.length > 0) return;
        for (const lot of lots) {
          const smaller = EIGHT[EIGHT.indexOf(lot.size.replace('sae:', '')) - 1];
          if (smaller === undefined) {
            expect(lot.governs).toBe('smallest');
            continue;
          }
          const sizes = trialSizes.map((size, cable) =>
            lot.cables.includes(cable) ? (`sae:${smaller}` as typeof size) : size,
          );
          const broken = tryOut(model, sizes).breaches.map(({ criterion }) => criterion);
          expect(broken).toContain(lot.governs);
        }
        expect(trial?.breaches).toEqual([]);
      }),
      { numRuns: isLong ? 500 : 60, seed: 20260303 },
    );
  });
});
