import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseSizes } from '../../src/assess/choose/choose.ts';
import { buildModel } from '../../src/assess/model.ts';
import { anyBlockAmp, blockFeed, tenths } from './blockFeed.ts';
import { leastOfEverySet, metal } from './everySet.ts';
import { twoBatteries } from './plans.ts';

const anyRadial = fc.record({
  feedM: tenths(5, 60),
  amps: fc.array(anyBlockAmp(1500), { minLength: 1, maxLength: 3 }),
  stock: fc.shuffledSubarray(['8', '4', '2', '1', '1/0', '2/0', '4/0'], { minLength: 2, maxLength: 4 }),
});

const RUNS = process.env.FEEDRUN_LONG === undefined ? 100 : 1500;

describe('the sizes chosen', () => {
  it('are of the least metal that breaks no rule, as trying every set shows', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyRadial, (draft) => {
        const model = buildModel(blockFeed(draft));
        const choice = chooseSizes(model);
        const least = leastOfEverySet(model);
        if (least === null) {
          expect(choice.failing.length).toBeGreaterThan(0);
          return;
        }
        expect(choice.failing).toEqual([]);
        expect(choice.proven).toBe(true);
        expect(choice.trial?.breaches).toEqual([]);
        expect(metal(model, choice.trialSizes)).toBeCloseTo(least, 9);
      }),
      { numRuns: RUNS, seed: 20260101 },
    );
  });

  it('break no rule where the current has a choice of way', () => {
    const model = buildModel(twoBatteries());
    const choice = chooseSizes(model);
    expect(choice.failing).toEqual([]);
    expect(choice.trial?.breaches).toEqual([]);
  });

  it('are one for a feed and the ground that returns the same current, and one through a pass-through', () => {
    const model = buildModel(
      blockFeed({
        feedM: 3,
        amps: [{ ratedW: 800, regulated: true, branchM: 1, groundM: 0.5, fused: true }],
        stock: ['8', '4', '2', '1/0', '4/0'],
      }),
    );
    expect(new Set(chooseSizes(model).sizes).size).toBe(1);
  });

  it('are told as none, with the drop as what binds, where no size in stock does it', () => {
    const model = buildModel(
      blockFeed({
        feedM: 60,
        amps: [{ ratedW: 400, regulated: true, branchM: 1, groundM: 0.5, fused: true }],
        stock: ['8', '4', '2'],
      }),
    );
    const { sizes, failing } = chooseSizes(model);
    expect(sizes.every((size) => size === null)).toBe(true);
    expect(failing.map(({ binds }) => binds)).toEqual(['drop']);
  });
});
