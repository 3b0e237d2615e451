import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseSizes } from '../../src/assess/choose/choose.ts';
import { buildModel } from '../../src/assess/model.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { leastOfEverySet, metal } from './everySet.ts';
import { PlanOf } from './planOf.ts';
import { twoBatteries } from './plans.ts';

interface Amp {
  ratedW: number;
  regulated: boolean;
  branchM: number;
  groundM: number;
  fused: boolean;
}

/** A feed, a block, up to three amplifiers, each with its branch and ground; three sizes in stock. */
function radialPlan({ feedM, amps, stock }: { feedM: number; amps: readonly Amp[]; stock: readonly string[] }): Plan {
  const draft = new PlanOf({ stock: stock.map((size) => `sae:${size}`) })
    .battery('battery')
    .fuse('main', 'auto', { zone: 'bay' })
    .block(
      'block',
      amps.map(({ fused }) => (fused ? 'auto' : null)),
    )
    .run('battery.positive', 'main.in', 0.2, { zone: 'bay' })
    .run('main.out', 'block.bus', feedM);
  for (const [index, { ratedW, regulated, branchM, groundM }] of amps.entries()) {
    draft
      .amplifier(`amp${index}`, { ratedW, regulated })
      .fitting('ground', `g${index}`)
      .run(`block.out${index + 1}`, `amp${index}.supply`, branchM)
      .run(`amp${index}.ground`, `g${index}.body`, groundM);
  }
  return draft.done();
}

const anyAmp = fc.record({
  ratedW: fc.integer({ min: 30, max: 1500 }),
  regulated: fc.boolean(),
  branchM: fc.integer({ min: 1, max: 30 }).map((tenths) => tenths / 10),
  groundM: fc.integer({ min: 1, max: 15 }).map((tenths) => tenths / 10),
  fused: fc.boolean(),
});

const anyRadial = fc.record({
  feedM: fc.integer({ min: 5, max: 60 }).map((tenths) => tenths / 10),
  amps: fc.array(anyAmp, { minLength: 1, maxLength: 3 }),
  stock: fc.shuffledSubarray(['8', '4', '2', '1', '1/0', '2/0', '4/0'], { minLength: 2, maxLength: 4 }),
});

const RUNS = process.env.FEEDRUN_LONG === undefined ? 100 : 1500;

describe('the sizes chosen', () => {
  it('are of the least metal that breaks no rule, as trying every set shows', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyRadial, (draft) => {
        const model = buildModel(radialPlan(draft));
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
      radialPlan({
        feedM: 3,
        amps: [{ ratedW: 800, regulated: true, branchM: 1, groundM: 0.5, fused: true }],
        stock: ['8', '4', '2', '1/0', '4/0'],
      }),
    );
    expect(new Set(chooseSizes(model).sizes).size).toBe(1);
  });

  it('are told as none, with the drop as what binds, where no size in stock does it', () => {
    const model = buildModel(
      radialPlan({
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
