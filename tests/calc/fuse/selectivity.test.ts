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

  const E40 = { family: 'iso8820-3-E', ratingA: 40 };

  it('by hand: a link behind its like is worst just past 1.35 times: 2 x (80 / 54)^2 = 4.39 s against 1800 s', () => {
    const found = selectivity(E40, E40, 54, 240);
    expect(found).toMatchObject({ shown: false, extrapolated: false });
    expect(found?.worstA).toBeCloseTo(54, 6);
    expect(found?.branchSlowestS).toBeCloseTo(1800, 2);
    expect(found?.mainFastestS).toBeCloseTo(4.38957, 4);
  });

  it('looks at no current outside the range: from 60 A, 2 x (80 / 60)^2 = 3.556 s against 50 x 0.75^-9.117 = 689 s', () => {
    const found = selectivity(E40, E40, 60, 240);
    expect(found?.worstA).toBe(60);
    expect(found?.mainFastestS).toBeCloseTo(3.5556, 4);
    expect(found?.branchSlowestS).toBeCloseTo(688.7, 0);
  });

  it('where the main carries all of the range, tells the times at its end', () => {
    const main = { family: 'iso8820-5-SF51', ratingA: 500 };
    expect(selectivity(E40, main, 54, 240)).toMatchObject({
      shown: true,
      worstA: 240,
      branchSlowestS: 1,
      mainFastestS: Number.POSITIVE_INFINITY,
      extrapolated: false,
    });
    expect(selectivity(E40, main, 10, 50)).toMatchObject({ worstA: 50, branchSlowestS: Number.POSITIVE_INFINITY });
  });

  it('says so where the main has no time of its own any more: type C ends at 350 % with its fastest', () => {
    const main = { family: 'iso8820-3-C', ratingA: 40 };
    // At 150 A: 0.04 x (140 / 150)^2 = 0.0348 s against 7 x (150 / 140)^-3.610 = 5.457 s.
    const beyond = selectivity(E40, main, 150, 200);
    expect(beyond).toMatchObject({ shown: false, worstA: 150, extrapolated: true });
    expect(beyond?.mainFastestS).toBeCloseTo(0.034844, 5);
    expect(beyond?.branchSlowestS).toBeCloseTo(5.457, 2);
    // The slowest of SF51 falls less than I^-2 from 200 to 350 %: worst at 140 A itself, which is a point of type C.
    const branch = { family: 'iso8820-5-SF51', ratingA: 60 };
    expect(selectivity(branch, main, 130, 140)).toMatchObject({
      worstA: 140,
      mainFastestS: 0.04,
      extrapolated: false,
    });
  });

  it('is shown only where the branch has opened before: at the very same moment it is not', () => {
    // SF51 of 100 A opens at 200 A in 1 s at the soonest; type E of 20 A is held at 1 s beyond 120 A.
    const branch = { family: 'iso8820-3-E', ratingA: 20 };
    const main = { family: 'iso8820-5-SF51', ratingA: 100 };
    expect(selectivity(branch, main, 200, 200)?.shown).toBe(false);
    // 1 x (200 / 170)^2 = 1.384 s
    expect(selectivity(branch, main, 170, 170)?.shown).toBe(true);
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
