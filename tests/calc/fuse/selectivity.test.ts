import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { selectivity } from '../../../src/calc/fuse/selectivity.ts';
import { clearingBand } from '../../../src/calc/fuse/timeCurrent.ts';

const FAMILIES = ['iso8820-3-F', 'iso8820-3-C', 'iso8820-3-E', 'iso8820-5-SF30', 'iso8820-5-SF51'];
const never = (seconds: number | null | undefined): number => seconds ?? Number.POSITIVE_INFINITY;

describe('selectivity by the limits of the standards', () => {
  it('by hand: type C 10 A behind SF51 500 A to 600 A: 0.1 s against 120 x (1.35 / 1.2)^2 = 151.9 s', () => {
    const found = selectivity(
      { family: 'iso8820-3-C', ratingA: 10 },
      { family: 'iso8820-5-SF51', ratingA: 500 },
      13.5,
      600,
    );
    expect(found).toMatchObject({ shown: true, worstA: 600, branchSlowestS: 0.1, extrapolated: true });
    expect(found?.mainFastestS).toBeCloseTo(151.875, 3);
  });

  it('is not shown for type E 60 A behind SF51 125 A: 1 s held against 0.1 x (750 / 1500)^2 = 0.025 s', () => {
    const found = selectivity(
      { family: 'iso8820-3-E', ratingA: 60 },
      { family: 'iso8820-5-SF51', ratingA: 125 },
      81,
      1500,
    );
    expect(found).toMatchObject({ shown: false, extrapolated: true });
    expect(found?.mainFastestS).toBeCloseTo(0.025, 6);
  });

  it('says nothing where a link has no published times', () => {
    const known = { family: 'iso8820-5-SF51', ratingA: 200 };
    expect(selectivity({ family: 'slotted-short', ratingA: 60 }, known, 60, 900)).toBeNull();
    expect(selectivity(known, { family: 'ul248-15-T', ratingA: 300 }, 60, 900)).toBeNull();
  });

  it('is shown where neither need open at all', () => {
    expect(
      selectivity({ family: 'iso8820-3-E', ratingA: 60 }, { family: 'iso8820-5-SF51', ratingA: 125 }, 1, 50),
    ).toMatchObject({
      shown: true,
    });
  });

  it('finds what a dense scan finds', () => {
    const part = fc.record({
      family: fc.constantFrom(...FAMILIES),
      ratingA: fc.constantFrom(10, 20, 40, 80, 125, 200, 500),
    });
    fc.assert(
      fc.property(
        part,
        part,
        fc.double({ min: 5, max: 100, noNaN: true }),
        fc.double({ min: 1.1, max: 100, noNaN: true }),
        (branch, main, fromA, reach) => {
          const found = selectivity(branch, main, fromA, fromA * reach);
          const ratios = Array.from({ length: 1001 }, (_, step) => {
            const amps = fromA * reach ** (step / 1000);
            const fastest = never(clearingBand(main, amps)?.fastestS);
            return fastest === Number.POSITIVE_INFINITY
              ? fastest
              : fastest / never(clearingBand(branch, amps)?.slowestS);
          });
          const least = Math.min(...ratios);
          const told = found === null ? Number.NaN : found.mainFastestS / found.branchSlowestS;
          if (found?.shown) expect(least).toBeGreaterThan(1);
          if (least < 0.999) expect(found?.shown).toBe(false);
          if (Number.isFinite(least)) expect(told).toBeLessThanOrEqual(least * (1 + 1e-6));
        },
      ),
      { seed: 41, numRuns: 200 },
    );
  });
});
