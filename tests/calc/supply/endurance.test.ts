import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { playTimeS, playTimeWhy, type Store, sharedByCapacity } from '../../../src/calc/supply/endurance.ts';
import { type MeanCase, meanCurrentA, meanCurrentWhy } from '../../../src/calc/supply/mean.ts';
import { whyValue } from '../../../src/calc/why.ts';
import { evaluateWhy } from '../evaluateWhy.ts';

const store = (change: Partial<Store> = {}): Store => ({
  capacityAh: 60,
  usableShare: 0.5,
  peukert: 1.2,
  currentA: 20,
  ...change,
});

const hours = (stores: readonly Store[]): number => (playTimeS(stores) ?? Number.NaN) / 3600;

describe("Peukert's law from the 20 hour rate", () => {
  it('the textbook example, from memory: 100 Ah, exponent 1.2, 10 A: 20 (100 / (10 x 20))^1.2 = 8.7 h', () => {
    const whole = store({ capacityAh: 100, usableShare: 1, currentA: 10 });
    expect(hours([whole])).toBeCloseTo(8.7, 1);
    expect(hours([whole])).toBeCloseTo(20 * 0.5 ** 1.2, 12);
  });

  it('the published one-ampere form agrees: 100 Ah in it, 1.2, lasts 14.5 h at 5 A', () => {
    // 100 Ah counted at 1 A, t = C / I^k, is a battery of C20 = 20 (100 / 20)^(1 / 1.2) Ah at the 20 hour rate
    const capacityAh = 20 * (100 / 20) ** (1 / 1.2);
    expect(hours([store({ capacityAh, usableShare: 1, currentA: 5 })])).toBeCloseTo(14.5, 1);
  });

  it('is the stated capacity at the stated rate, and no more than it below', () => {
    expect(hours([store({ usableShare: 1, currentA: 3 })])).toBeCloseTo(20, 12);
    expect(hours([store({ usableShare: 1, currentA: 0.3 })])).toBeCloseTo(200, 10);
  });

  it('60 Ah, half usable, 20 A: 61.6 minutes', () => expect(hours([store()]) * 60).toBeCloseTo(61.6, 1));

  it('has no end when nothing is drawn', () => {
    expect(playTimeS([store({ currentA: 0 })])).toBeNull();
    expect(playTimeS([])).toBeNull();
    expect(playTimeWhy([])).toBeNull();
    expect(playTimeS([store({ currentA: 0 }), store()])).toBe(playTimeS([store()]));
  });
});

const stores = fc.array(
  fc.record({
    capacityAh: fc.double({ min: 0.01, max: 2000, noNaN: true }),
    usableShare: fc.double({ min: 0.05, max: 1, noNaN: true }),
    peukert: fc.double({ min: 1, max: 1.6, noNaN: true }),
    currentA: fc.double({ min: 0.01, max: 3000, noNaN: true }),
  }),
  { minLength: 1, maxLength: 4 },
);

describe('several batteries', () => {
  it('share by capacity: 30 A to 60 and 90 Ah', () => {
    const [one = 0, other = 0] = sharedByCapacity([60, 90], 30);
    expect(one).toBeCloseTo(12, 12);
    expect(other).toBeCloseTo(18, 12);
  });

  it('that share by capacity last as one of the summed capacity; any other share lasts less long', () => {
    const capacities = fc.array(fc.double({ min: 1, max: 500, noNaN: true }), { minLength: 1, maxLength: 5 });
    const weights = fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(capacities, weights, fc.double({ min: 0.5, max: 800, noNaN: true }), (sizes, weighed, amps) => {
        const total = sizes.reduce((sum, size) => sum + size, 0);
        const asOne = hours([store({ capacityAh: total, currentA: amps })]);
        const lasts = (shares: readonly number[]) =>
          hours(sizes.map((capacityAh, index) => store({ capacityAh, currentA: shares[index] ?? 0 })));
        expect(lasts(sharedByCapacity(sizes, amps)) / asOne).toBeCloseTo(1, 9);
        const used = weighed.slice(0, sizes.length);
        const weight = used.reduce((sum, one) => sum + one, 0);
        expect(lasts(used.map((one) => (amps * one) / weight))).toBeLessThanOrEqual(asOne * (1 + 1e-9));
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('time is finite, above 0, falls with current and rises with capacity; its why comes to the same', () => {
    fc.assert(
      fc.property(stores, (all) => {
        const time = playTimeS(all) ?? Number.NaN;
        expect(time).toBeGreaterThan(0);
        expect(Number.isFinite(time)).toBe(true);
        const more = (change: (one: Store) => Store): number => playTimeS(all.map(change)) ?? Number.NaN;
        expect(more((one) => ({ ...one, currentA: one.currentA * 1.1 }))).toBeLessThan(time);
        expect(more((one) => ({ ...one, capacityAh: one.capacityAh * 1.1 }))).toBeGreaterThan(time);
        const why = playTimeWhy(all);
        if (why === null) throw new Error('no why');
        expect(whyValue(why)).toBe(time);
        expect(evaluateWhy(why) / time).toBeCloseTo(1, 9);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

describe('why a system lasts so long', () => {
  it('names the one battery, or each of several by its number and the first to be empty', () => {
    expect(playTimeWhy([store()])?.result).toBe('tPlay');
    const both = playTimeWhy([store(), store({ currentA: 10 })]);
    expect(both?.result).toBe('tFirst');
    expect(both?.steps.map(({ symbol }) => symbol)).toEqual(expect.arrayContaining(['tPlay_1', 'tPlay_2']));
  });
});

describe('mean current', () => {
  const of = (change: Partial<MeanCase>): MeanCase => ({ stage: 'B', fullA: 100, idleA: 1, duty: 1 / 3, ...change });

  it('class B against the published ratios of the ideal stage: 1, 0.577, 0.354', () => {
    expect(meanCurrentA(of({ duty: 1 }))).toBe(100);
    expect(meanCurrentA(of({ duty: 1 / 3 }))).toBeCloseTo(57.7, 1);
    expect(meanCurrentA(of({ duty: 1 / 8 }))).toBeCloseTo(35.4, 1);
  });

  it('class D: in proportion to power, and its idle current', () => {
    expect(meanCurrentA(of({ stage: 'D' }))).toBeCloseTo(34.333, 3);
    // the published ratio for class D at an eighth is 0.15 to 0.20 with idle losses
    const eighth = meanCurrentA(of({ stage: 'D', duty: 1 / 8, idleA: 4 })) / 100;
    expect(eighth).toBeGreaterThan(0.15);
    expect(eighth).toBeLessThan(0.2);
  });

  it('rises with duty and current; its why comes to the same', () => {
    const cases = fc.record({
      stage: fc.constantFrom<MeanCase['stage']>('B', 'D'),
      fullA: fc.double({ min: 0, max: 2000, noNaN: true }),
      idleA: fc.double({ min: 0, max: 50, noNaN: true }),
      duty: fc.double({ min: 0.01, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, (one) => {
        const mean = meanCurrentA(one);
        expect(whyValue(meanCurrentWhy(one))).toBe(mean);
        expect(evaluateWhy(meanCurrentWhy(one))).toBeCloseTo(mean, 9);
        expect(meanCurrentA({ ...one, fullA: one.fullA + 1 })).toBeGreaterThan(mean);
        expect(meanCurrentA({ ...one, duty: Math.min(1, one.duty * 1.1) })).toBeGreaterThanOrEqual(mean);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});
