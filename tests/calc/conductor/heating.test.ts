import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugesOf } from '../../../src/calc/conductor/gauge.ts';
import {
  type HeatingCase,
  steadyTemperatureC,
  steadyTemperatureWhy,
  warmedC,
  warmingOf,
} from '../../../src/calc/conductor/heating.ts';
import { resistancePerMOhm } from '../../../src/calc/conductor/resistance.ts';
import { INSULATION_CLASSES_C } from '../../../src/calc/tables/ampacity.ts';
import { MATERIALS } from '../../../src/calc/tables/materials.ts';
import table5 from '../../fixtures/published/cfr183425Table5.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

const cable = (id: string, ambientC: number, change: Partial<HeatingCase> = {}): HeatingCase => ({
  gauge: gaugeId(id),
  material: 'copper',
  insulationC: 105,
  ambientC,
  ...change,
});

describe('steady temperature', () => {
  it.each(table5.rows)(
    '33 CFR 183.425 Table 5, $awg AWG: its current brings each class to its temperature in 30 °C',
    ({ awg, amps }) => {
      for (const [index, insulationC] of INSULATION_CLASSES_C.entries()) {
        expect(steadyTemperatureC(amps[index] ?? 0, cable(`awg:${awg}`, 30, { insulationC }))).toBeCloseTo(
          insulationC,
          9,
        );
      }
    },
  );

  it('is the ambient without current', () => expect(steadyTemperatureC(0, cable('sae:4', 63))).toBeCloseTo(63, 12));

  it('has none beyond sqrt((234.5 + 105) / 75) = 2.13 times the table current at 105 °C', () => {
    const limit = 160 * Math.sqrt(339.5 / 75);
    expect(steadyTemperatureC(limit * 1.0001, cable('awg:4', 30))).toBeNull();
    expect(steadyTemperatureC(limit * 0.99, cable('awg:4', 30))).toBeGreaterThan(10_000);
  });

  it('is none, and never without end, at that very current', () => {
    // among these are some at which the share of rising resistance comes to 1 to the last digit
    for (const { awg, amps } of table5.rows)
      for (const [index, insulationC] of INSULATION_CLASSES_C.entries()) {
        const limitA = (amps[index] ?? 0) * Math.sqrt((234.5 + insulationC) / (insulationC - 30));
        const of = cable(`awg:${awg}`, 30, { insulationC });
        for (const steadyC of [steadyTemperatureC(limitA, of), warmedC(limitA, warmingOf(of), 30)])
          expect(steadyC ?? 0).not.toBe(Number.POSITIVE_INFINITY);
      }
  });

  it('holds the balance it claims, whatever the cable', () => {
    const sizes = fc.constantFrom(...gaugesOf('sae'), ...gaugesOf('mm2'));
    const cases = fc.record({
      gauge: sizes,
      material: fc.constantFrom(...MATERIALS),
      insulationC: fc.constantFrom(...INSULATION_CLASSES_C),
      ambientC: fc.double({ min: -20, max: 120, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, fc.double({ min: 0.1, max: 400, noNaN: true }), (of, amps) => {
        const steady = steadyTemperatureC(amps, of);
        if (steady === null) return;
        const why = steadyTemperatureWhy(amps, of);
        const at30 = why.steps.find(({ symbol }) => symbol === 'I30')?.value;
        // Heat made per metre at the temperature found, against heat shed in proportion to the rise above the air.
        const made = (atC: number, current: number) => current ** 2 * resistancePerMOhm(of.gauge, of.material, atC);
        const shedPerK = made(of.insulationC, Number(at30)) / (of.insulationC - 30);
        expect(made(steady, amps) / (shedPerK * (steady - of.ambientC))).toBeCloseTo(1, 6);
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  it('is worked out again from its why, with and without a steady state', () => {
    expect(evaluateWhy(steadyTemperatureWhy(58.9, cable('sae:1', 80)))).toBeCloseTo(84.38, 2);
    const none = steadyTemperatureWhy(600, cable('sae:1', 80, { carpet: true }));
    expect(none.result).toBe('q');
    expect(evaluateWhy(none)).toBeGreaterThan(1);
  });

  it('is higher under carpet', () => {
    expect(steadyTemperatureC(60, cable('sae:4', 50, { carpet: true }))).toBeGreaterThan(
      steadyTemperatureC(60, cable('sae:4', 50)) ?? Number.NaN,
    );
  });
});

describe('a feed by hand: SAE 1, 1.2 m in the bay at 80 °C and 4.6 m at 50 °C, 105 °C cable', () => {
  it('drops 0.306 V at 102 A while heated by 58.9 A', () => {
    // By hand: area 77790 cmil = 39.417 mm2; r20 = 1.02 x 1.7241e-8 / 39.417e-6 = 4.4615e-4 ohm/m.
    // I30 = 245 x sqrt(39.417 / 42.408) = 236.2 A; q = (58.9 / 236.2)^2 x 75 / 339.5 = 0.013737.
    // Tx = (80 + 234.5 q) / (1 - q) = 84.38 and (50 + 234.5 q) / (1 - q) = 53.96 degC.
    // r = 4.4615e-4 x 318.88 / 254.5 = 5.590e-4 and 4.4615e-4 x 288.46 / 254.5 = 5.057e-4 ohm/m.
    // 102 x (1.2 x 5.590e-4 + 4.6 x 5.057e-4) = 102 x 2.9970e-3 = 0.3057 V.
    const id = gaugeId('sae:1');
    const ohm = (lengthM: number, ambientC: number) =>
      lengthM * resistancePerMOhm(id, 'copper', steadyTemperatureC(58.9, cable('sae:1', ambientC)) ?? Number.NaN);
    expect(102 * (ohm(1.2, 80) + ohm(4.6, 50))).toBeCloseTo(0.3057, 3);
  });
});

describe('the balance worked out before', () => {
  it('by hand: 4 AWG, copper, 105 °C, whose table current is 160 A: 100 A in 50 °C settle at 76.9 °C', () => {
    // q = (100 / 160)^2 x 75 / 339.5 = 0.086294; (50 + 234.5 q) / (1 - q) = 76.87 degC.
    const balance = warmingOf({ gauge: gaugeId('awg:4'), material: 'copper', insulationC: 105 });
    expect(balance.betaC).toBe(234.5);
    expect(balance.sharePerA2).toBeCloseTo(75 / 339.5 / 160 ** 2, 12);
    const q = (100 / 160) ** 2 * (75 / 339.5);
    expect(warmedC(100, balance, 50)).toBeCloseTo((50 + 234.5 * q) / (1 - q), 9);
    expect(warmedC(0, balance, 50)).toBe(50);
    // The share reaches 1 at 160 x sqrt(339.5 / 75) = 340.4 A.
    expect(warmedC(340, balance, 50)).toBeGreaterThan(1000);
    expect(warmedC(341, balance, 50)).toBeNull();
  });
});
