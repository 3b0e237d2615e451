import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Alternator, alternatorHotA, alternatorHotWhy } from '../../../src/calc/supply/alternator.ts';
import { chargingBalance, chargingWhy } from '../../../src/calc/supply/charging.ts';
import { type Why, whyValue } from '../../../src/calc/why.ts';
import { evaluateWhy } from '../evaluateWhy.ts';

describe('alternator output', () => {
  it('a 90 A plate, 0.8 hot: 72 A at cruise, 32.4 A at idle', () => {
    expect(alternatorHotA({ ratedA: 90, idleA: null }, 'cruise')).toBeCloseTo(72, 12);
    expect(alternatorHotA({ ratedA: 90, idleA: null }, 'idle')).toBeCloseTo(32.4, 12);
  });

  it('a plate of 45 / 90 A: its own idle figure goes before the share', () => {
    expect(alternatorHotA({ ratedA: 90, idleA: 45 }, 'idle')).toBeCloseTo(36, 12);
    expect(alternatorHotA({ ratedA: 90, idleA: 45, hotShare: 1 }, 'idle')).toBe(45);
    expect(alternatorHotA({ ratedA: 90, idleA: 45, hotShare: 1 }, 'cruise')).toBe(90);
  });

  it('is told as what it is: of the plate, unless the caller knows better', () => {
    const about = { origin: 'measured' } as const;
    const of = { ratedA: 90, idleA: 45 };
    const step = (why: Why, symbol: string) => why.steps.find((each) => each.symbol === symbol);
    const idle = alternatorHotWhy(of, 'idle');
    expect(step(idle, 'Iplate')).toMatchObject({ value: 45, source: 'iso8854' });
    expect(step(idle, 'kHot')).toMatchObject({ value: 0.8, source: 'alternatorHot' });
    expect(step(alternatorHotWhy(of, 'cruise'), 'IR')).toMatchObject({ value: 90, source: 'iso8854' });
    const told = alternatorHotWhy(of, 'idle', { idleA: about, hotShare: about });
    expect(step(told, 'Iplate')).toEqual({ symbol: 'Iplate', unit: 'A', value: 45, ...about });
    expect(step(told, 'kHot')).toEqual({ symbol: 'kHot', unit: '1', value: 0.8, ...about });
    const rated = step(alternatorHotWhy(of, 'cruise', { ratedA: about }), 'IR');
    expect(rated).toEqual({ symbol: 'IR', unit: 'A', value: 90, ...about });
  });

  it('sanity against one published service table, 24 A cold and 16 A hot at 1300 a minute, 50 A plate', () => {
    // its speed lies a little below idle of the rating, so the estimate must lie between its hot and cold figures
    const hot = alternatorHotA({ ratedA: 50, idleA: null }, 'idle');
    expect(hot).toBeGreaterThan(16);
    expect(hot).toBeLessThan(24);
  });
});

const amps = fc.double({ min: 0, max: 1000, noNaN: true });
const plates: fc.Arbitrary<Alternator> = fc.record({
  ratedA: fc.double({ min: 1, max: 1000, noNaN: true }),
  idleA: fc.option(amps),
  hotShare: fc.double({ min: 0.3, max: 1, noNaN: true }),
});
const cases = fc.record({
  meansA: fc.array(amps, { maxLength: 5 }),
  vehicleA: amps,
  outputsA: fc.array(amps, { maxLength: 3 }),
});

describe('charging balance', () => {
  it('amplifier 35 A, vehicle 35 A, alternator 90 A: 2 A to spare at cruise, 37.6 A short at idle', () => {
    const of = { meansA: [35], vehicleA: 35 };
    expect(chargingBalance({ ...of, outputsA: [72] })).toEqual({ demandA: 70, outputA: 72, deficitA: 0, spareA: 2 });
    const idle = chargingBalance({ ...of, outputsA: [32.4] });
    expect(idle.deficitA).toBeCloseTo(37.6, 12);
    expect(idle.spareA).toBe(0);
  });

  it('no alternator: all of it is missing', () => {
    expect(chargingBalance({ meansA: [], vehicleA: 35, outputsA: [] }).deficitA).toBe(35);
  });

  it('balances: output + deficit = demand + spare, one of them 0; the why comes to the same', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { demandA, outputA, deficitA, spareA } = chargingBalance(of);
        expect(outputA + deficitA).toBeCloseTo(demandA + spareA, 8);
        expect(Math.min(deficitA, spareA)).toBe(0);
        expect(whyValue(chargingWhy(of))).toBe(deficitA);
        expect(evaluateWhy(chargingWhy(of))).toBeCloseTo(deficitA, 8);
        expect(chargingBalance({ ...of, vehicleA: of.vehicleA + 1 }).deficitA).toBeGreaterThanOrEqual(deficitA);
        expect(chargingBalance({ ...of, outputsA: [...of.outputsA, 5] }).deficitA).toBeLessThanOrEqual(deficitA);
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  it('an output hot is never above the plate; its why comes to the same', () => {
    fc.assert(
      fc.property(plates, fc.constantFrom('idle' as const, 'cruise' as const), (of, speed) => {
        const hot = alternatorHotA(of, speed);
        expect(hot).toBeLessThanOrEqual(Math.max(of.ratedA, of.idleA ?? 0));
        expect(hot).toBeGreaterThanOrEqual(0);
        expect(whyValue(alternatorHotWhy(of, speed))).toBe(hot);
        expect(evaluateWhy(alternatorHotWhy(of, speed))).toBeCloseTo(hot, 9);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
