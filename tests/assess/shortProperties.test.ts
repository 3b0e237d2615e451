import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess, factsOfPlan } from '../../src/assess/assess.ts';
import { shortAt } from '../../src/assess/short/at.ts';
import { shortCurves } from '../../src/assess/short/curves.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { anyPlan } from './anyPlan.ts';
import { PlanOf } from './planOf.ts';

const RUNS = process.env.FEEDRUN_LONG === undefined ? 40 : 2000;
const LONG_MS = 600_000;

const isFiniteAll = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(isFiniteAll);

describe('shorts of any plan that opens', () => {
  it('are finite, the lowest no more than the highest, in the assessment, slid along and drawn', {
    timeout: LONG_MS,
  }, () => {
    fc.assert(
      fc.property(
        anyPlan,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(0, 0.001, 1),
        (plan, share, faultOhm) => {
          const { shorts } = assess(plan);
          const facts = factsOfPlan(plan);
          for (const short of shorts) {
            expect(isFiniteAll(short)).toBe(true);
            expect(short.lowestA).toBeLessThanOrEqual(short.highestA * (1 + 1e-9));
            for (const { lowestA, highestA } of short.fuses) expect(lowestA).toBeLessThanOrEqual(highestA * (1 + 1e-9));
          }
          for (const { runId } of shorts.slice(0, 2)) {
            expect(isFiniteAll(shortAt(facts, { runId, share, faultOhm }))).toBe(true);
            expect(isFiniteAll(shortCurves(facts, runId))).toBe(true);
          }
        },
      ),
      { numRuns: RUNS, seed: 20260601 },
    );
  });
});

/** A front battery and, where told, a rear one of its own, on a block that feeds an amplifier. */
const fed = (feedM: number, rearCcaA: number | null): Plan => {
  const plan = new PlanOf()
    .battery('front')
    .fuse('f1', 125, { zone: 'bay' })
    .block('block', [null])
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g')
    .run('front.positive', 'f1.in', 0.15, { size: 'sae:1/0' })
    .run('f1.out', 'block.bus', feedM, { size: 'sae:1/0' })
    .run('block.out1', 'amp.supply', 0.5, { size: 'sae:1/0' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' });
  if (rearCcaA === null) return plan.done();
  return plan
    .battery('rear', { zone: 'cargo', ccaA: { value: rearCcaA, origin: 'told' } })
    .fuse('f2', 125)
    .run('rear.positive', 'f2.in', 0.15, { size: 'sae:1/0' })
    .run('f2.out', 'block.bus', 1, { size: 'sae:1/0' })
    .done();
};
const onBranch = (plan: Plan) => assess(plan).shorts.find(({ runId }) => runId === 'block-amp');

describe('prospective current', () => {
  it('falls with length, and never with another source', { timeout: LONG_MS }, () => {
    const metres = fc.integer({ min: 2, max: 200 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(metres, metres, fc.integer({ min: 50, max: 1200 }), (oneM, otherM, ccaA) => {
        const [shorterM, longerM] = [Math.min(oneM, otherM), Math.max(oneM, otherM) + 0.1];
        const [near, far, both] = [
          onBranch(fed(shorterM, null)),
          onBranch(fed(longerM, null)),
          onBranch(fed(longerM, ccaA)),
        ];
        expect(far?.lowestA).toBeLessThan(near?.lowestA ?? 0);
        expect(far?.highestA).toBeLessThan(near?.highestA ?? 0);
        expect(both?.lowestA).toBeGreaterThan(far?.lowestA ?? Infinity);
        expect(both?.highestA).toBeGreaterThan(far?.highestA ?? Infinity);
      }),
      { numRuns: RUNS, seed: 20260602 },
    );
  });
});
