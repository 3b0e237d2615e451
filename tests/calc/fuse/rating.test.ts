import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  holderFactor,
  holderFactorWhy,
  holderTemperatureCovered,
  largestRating,
  largestRatingWhy,
  linkOhm,
  linkOhmWhy,
  neededRating,
  neededRatingWhy,
  pickFamily,
  smallestRating,
  smallestRatingWhy,
  standardRatings,
} from '../../../src/calc/fuse/rating.ts';
import type { LinkFamily } from '../../../src/calc/tables/links.ts';
import type { Why } from '../../../src/calc/why.ts';
import holder from '../../fixtures/published/holderTemperature.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';

describe('holder temperature factor', () => {
  it.each(holder.rows)('type E 40 A data sheet: $usableA A at $ambientC °C', ({ ambientC, usableA }) => {
    expect(holderFactor(ambientC)).toBeCloseTo(usableA / 40, 12);
  });
  it.each([
    [-40, 1],
    [0, 1],
    [42.5, 0.925],
    [80, 0.775],
    [100, 0.675],
    [140, 0.55],
  ])('%d °C: %d', (ambientC, factor) => {
    expect(holderFactor(ambientC)).toBeCloseTo(factor, 12);
    expect(evaluateWhy(holderFactorWhy(ambientC))).toBeCloseTo(factor, 12);
  });
  it('says where nothing is published', () => {
    expect([-41, -40, 125, 126].map(holderTemperatureCovered)).toEqual([false, true, true, false]);
  });
});

describe('needed rating', () => {
  it.each([
    ['full current above the warm heating current', { fullA: 102, heatingA: 58.9, holderC: 80 }, 102],
    ['tones, cool holder: the 80 % rule', { fullA: 100, heatingA: 100, holderC: 20 }, 125],
    ['tones, hot holder', { fullA: 100, heatingA: 100, holderC: 85 }, 100 / 0.75],
    ['on-board fuses above both', { fullA: 102, heatingA: 58.9, holderC: 80, sumOnboardA: 120 }, 120],
    ['on-board fuses below both', { fullA: 102, heatingA: 58.9, holderC: 80, sumOnboardA: 60 }, 102],
  ])('%s', (_name, of, amps) => {
    expect(neededRating(of)).toBeCloseTo(amps, 9);
    expect(evaluateWhy(neededRatingWhy(of))).toBeCloseTo(amps, 9);
  });

  it('never lies below the full current or below 1.25 times the heating current', () => {
    const amps = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(amps, amps, fc.double({ min: -60, max: 200, noNaN: true }), (fullA, heatingA, holderC) => {
        const need = neededRating({ fullA, heatingA, holderC });
        expect(need).toBeGreaterThanOrEqual(Math.max(fullA, 1.25 * heatingA - 1e-9));
        expect(evaluateWhy(neededRatingWhy({ fullA, heatingA, holderC }))).toBeCloseTo(need, 9);
      }),
      { seed: 5, numRuns: 100 },
    );
  });
});

describe('choosing a rating', () => {
  const sf51 = standardRatings(['iso8820-5-SF51']);
  it('takes the smallest that serves and fits under the conductor', () => {
    expect(smallestRating(sf51, 102, 136)).toBe(125);
    expect(smallestRating(sf51, 125, 125)).toBe(125);
    expect(smallestRating(sf51, 126, 136)).toBeNull();
    expect(smallestRating(sf51, 501, Number.POSITIVE_INFINITY)).toBeNull();
  });
  it('takes the largest the conductor allows when the conductor is fixed', () => {
    expect(largestRating(sf51, 136)).toBe(125);
    expect(largestRating(sf51, 59)).toBeNull();
  });
  it('shows why', () => {
    const why = smallestRatingWhy({ fullA: 102, heatingA: 58.9, holderC: 80 }, sf51);
    expect(why && evaluateWhy(why)).toBe(125);
    expect(smallestRatingWhy({ fullA: 600, heatingA: 10, holderC: 20 }, sf51)).toBeNull();
    const largest = largestRatingWhy(sf51, 136);
    expect(largest && evaluateWhy(largest)).toBe(125);
    expect(largestRatingWhy(sf51, 5)).toBeNull();
  });
});

describe('link resistance', () => {
  it('drops 75 mV at the rating', () => {
    expect(linkOhm(40) * 40).toBeCloseTo(0.075, 12);
    expect(evaluateWhy(linkOhmWhy(125))).toBeCloseTo(0.0006, 12);
    expect(linkOhm(100, 0.1)).toBeCloseTo(0.001, 12);
    expect(evaluateWhy(linkOhmWhy(100, 0.1))).toBeCloseTo(0.001, 12);
    const dropOf = (why: Why) => why.steps.find(({ symbol }) => symbol === 'Ulink');
    expect(dropOf(linkOhmWhy(100))).toMatchObject({ value: 0.075, source: 'linkDrop' });
    expect(dropOf(linkOhmWhy(100, 0.1, { dropV: { origin: 'measured' } }))).toEqual({
      symbol: 'Ulink',
      unit: 'V',
      value: 0.1,
      origin: 'measured',
    });
  });
});

describe('families', () => {
  it('offers every rating of several families once, ascending', () => {
    expect(standardRatings(['iso8820-3-E', 'iso8820-3-C'])).toEqual([
      1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100,
    ]);
    expect(standardRatings([])).toEqual([]);
    // 75, 90 and 225 A upward come from the second family alone, and belong among those of the first.
    expect(standardRatings(['iso8820-5-SF30', 'post-link'])).toEqual([
      30, 40, 50, 60, 70, 75, 80, 90, 100, 125, 150, 175, 200, 225, 250, 300,
    ]);
  });
  it('prefers breaking capacity, then the smaller body', () => {
    expect(pickFamily(30, ['iso8820-3-E', 'iso8820-3-C', 'iso8820-3-F'])).toBe('iso8820-3-F');
    expect(pickFamily(40, ['iso8820-3-C', 'iso8820-3-E', 'iso8820-5-SF30'])).toBe('iso8820-5-SF30');
    expect(pickFamily(150, ['iso8820-5-SF51', 'iso8820-5-SF30', 'slotted-short'])).toBe('iso8820-5-SF30');
    expect(pickFamily(150, ['slotted-long', 'slotted-short'])).toBe('slotted-short');
    expect(pickFamily(300, ['slotted-long', 'iso8820-5-SF51'])).toBe('iso8820-5-SF51');
  });
  it('finds none for a rating nobody makes or a voltage too high', () => {
    expect(pickFamily(33, ['iso8820-3-C', 'iso8820-5-SF51'])).toBeNull();
    expect(pickFamily(100, [])).toBeNull();
    expect(pickFamily(100, ['iso8820-3-E'], 48)).toBeNull();
    expect(pickFamily(100, ['iso8820-3-E'], 24)).toBe('iso8820-3-E');
    expect(pickFamily(100, ['iso8820-3-E'], 32)).toBe('iso8820-3-E');
  });
  it('takes a link of the user for 12 V where it is rated for just that, and for 24 V not', () => {
    const own: LinkFamily = {
      id: 'own1',
      ratingsA: [130],
      ratingsSource: 'feedrunRules',
      ratedV: 12,
      breakingA: 1500,
      breakingSource: null,
      boltMm: null,
    };
    expect(pickFamily(130, ['own1'], undefined, [own])).toBe('own1');
    expect(pickFamily(130, ['own1'], 24, [own])).toBeNull();
  });
});
