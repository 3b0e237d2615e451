import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BatteryCase,
  type BatteryCondition,
  batteryOhm,
  batteryOhmWhy,
  type Chemistry,
} from '../../../src/calc/supply/battery.ts';
import { type SystemV, systemFigures } from '../../../src/calc/supply/systemVolts.ts';
import { CCA_STANDARDS, CCA_TESTS, type CcaStandard } from '../../../src/calc/tables/ccaStandards.ts';
import { whyValue } from '../../../src/calc/why.ts';
import { evaluateWhy } from '../evaluateWhy.ts';

const battery = (change: Partial<BatteryCase> = {}): BatteryCase => ({
  chemistry: 'leadAcid',
  ccaA: 600,
  ccaStandard: 'sae',
  ownOhm: null,
  systemV: 12,
  ...change,
});

const CONDITIONS: readonly BatteryCondition[] = ['warm', 'cold', 'coldAged'];
const CHEMISTRIES: readonly Chemistry[] = ['leadAcid', 'lithium', 'supercapacitor'];

describe('lead-acid resistance from cranking amperes', () => {
  // worked by hand from 12.6 V and the end voltage of SAE J537: 5.4 V / CCA, warm between 0.4 and 0.5 of it
  it.each([
    [400, 0.0135, 0.0054, 0.00675],
    [600, 0.009, 0.0036, 0.0045],
    [800, 0.00675, 0.0027, 0.0034],
  ])('%d A by SAE J537: cold %d ohm, warm from %d to %d', (ccaA, cold, least, most) => {
    expect(batteryOhm(battery({ ccaA }), 'cold')).toBeCloseTo(cold, 12);
    expect(batteryOhm(battery({ ccaA }), 'coldAged')).toBeCloseTo(2 * cold, 12);
    const warm = batteryOhm(battery({ ccaA }), 'warm');
    expect(warm).toBeGreaterThan(least);
    expect(warm).toBeLessThan(most);
  });

  it('a 600 A battery, warm: 4.05 mohm, about 3100 A into a short at its posts', () => {
    const warm = batteryOhm(battery(), 'warm');
    expect(warm).toBeCloseTo(0.00405, 12);
    expect(12.6 / warm).toBeCloseTo(3111, 0);
  });

  it.each([
    ['sae', 5.4],
    ['en', 5.1],
    ['din', 3.6],
    ['iec', 4.2],
  ] as const)('%s: the fall from 12.6 V to the end of its own test, %d V', (ccaStandard, fallV) => {
    expect(batteryOhm(battery({ ccaStandard, ccaA: 500 }), 'cold')).toBeCloseTo(fallV / 500, 12);
  });

  it('keeps the published definitions of the labels', () => {
    const published = {
      sae: [7.2, 30, -18],
      en: [7.5, 10, -18],
      din: [9, 30, -18],
      iec: [8.4, 60, -18],
      ca: [7.2, 30, 0],
    };
    for (const standard of CCA_STANDARDS) {
      const { endV, afterS, testC } = CCA_TESTS[standard];
      expect([endV, afterS, testC]).toEqual(published[standard]);
    }
  });

  /** Label of the same battery by each standard, if it were a resistance behind 12.6 V. */
  const label = (ccaStandard: CcaStandard): number => 500 * batteryOhm(battery({ ccaStandard, ccaA: 500 }), 'cold');

  it('sanity: DIN is about 0.6 of EN and SAE (from memory), within a fifth', () => {
    for (const other of ['en', 'sae'] as const) {
      expect(label('din') / label(other)).toBeGreaterThan(0.6 * 0.95);
      expect(label('din') / label(other)).toBeLessThan(0.6 * 1.2);
    }
  });

  it('sanity: CA is about 1.25 of CCA (from memory), within 5 %', () => {
    expect(label('ca') / label('sae')).toBeGreaterThan(1.25 * 0.95);
    expect(label('ca') / label('sae')).toBeLessThan(1.25 * 1.05);
  });

  it('sanity: old IEC lies between DIN and SAE, EN just below SAE', () => {
    expect(label('iec')).toBeGreaterThan(label('din'));
    expect(label('iec')).toBeLessThan(label('en'));
    expect(label('en') / label('sae')).toBeCloseTo(0.944, 3);
  });
});

describe('told and other batteries', () => {
  it('its own resistance goes before cranking amperes: as told when warm', () => {
    const told = battery({ ownOhm: 0.005 });
    expect(batteryOhm(told, 'warm')).toBe(0.005);
    expect(batteryOhm(told, 'cold')).toBeCloseTo(0.005 / 0.45, 12);
    expect(batteryOhm({ ...told, systemV: 24 }, 'warm')).toBe(0.005);
  });

  it('lithium 2 mohm and supercapacitors 0.5 mohm for each 12 V, twice that when aged', () => {
    for (const [chemistry, ohm] of [
      ['lithium', 0.002],
      ['supercapacitor', 0.0005],
    ] as const) {
      expect(batteryOhm(battery({ chemistry }), 'warm')).toBe(ohm);
      expect(batteryOhm(battery({ chemistry }), 'coldAged')).toBeCloseTo(2 * ohm, 12);
      expect(batteryOhm(battery({ chemistry, ownOhm: 0.0011 }), 'warm')).toBe(0.0011);
    }
  });

  it('24 V: two in series, twice the resistance', () => {
    for (const chemistry of CHEMISTRIES) {
      for (const condition of CONDITIONS) {
        const one = batteryOhm(battery({ chemistry }), condition);
        expect(batteryOhm(battery({ chemistry, systemV: 24 }), condition)).toBeCloseTo(2 * one, 12);
      }
    }
  });

  it('by hand: 600 A at 0 degC are 5.4 / 600 ohm there, 1 - 0.55 x 18 / 43 = 0.7698 of the cold', () => {
    expect(batteryOhm(battery({ ccaStandard: 'ca' }), 'cold')).toBeCloseTo(0.009 / (1 - (0.55 * 18) / 43), 12);
  });

  it('takes any figure above 0, however odd', () => {
    expect(batteryOhm(battery({ ownOhm: 1 }), 'warm')).toBe(1);
    expect(batteryOhm(battery({ ccaA: 0.5 }), 'cold')).toBeCloseTo(10.8, 12);
  });

  it('shows a label of the cold as what it is, and only one for 0 degC carried over', () => {
    const shown = (ccaStandard: CcaStandard) =>
      batteryOhmWhy(battery({ ccaStandard }), 'cold').steps.map(({ symbol }) => symbol);
    for (const symbol of ['Rtest', 'kTest', 'Ttest']) {
      expect(shown('sae')).not.toContain(symbol);
      expect(shown('ca')).toContain(symbol);
    }
  });

  it('refuses what no battery has', () => {
    expect(() => batteryOhm(battery({ ccaA: 0 }), 'warm')).toThrow(RangeError);
    expect(() => batteryOhm(battery({ ownOhm: 0 }), 'warm')).toThrow(RangeError);
  });
});

describe('whatever the battery', () => {
  const cases = fc.record({
    chemistry: fc.constantFrom(...CHEMISTRIES),
    ccaA: fc.double({ min: 10, max: 5000, noNaN: true }),
    ccaStandard: fc.constantFrom(...CCA_STANDARDS),
    ownOhm: fc.option(fc.double({ min: 0.00001, max: 1, noNaN: true })),
    systemV: fc.constantFrom<SystemV>(12, 24),
  });

  it('resistance is finite, above 0 and rises with cold and age; its why comes to the same', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const [warm = 0, cold = 0, aged = 0] = CONDITIONS.map((condition) => {
          const why = batteryOhmWhy(of, condition);
          const ohm = batteryOhm(of, condition);
          expect(whyValue(why)).toBe(ohm);
          expect(evaluateWhy(why)).toBeCloseTo(ohm, 12);
          return ohm;
        });
        expect(warm).toBeGreaterThan(0);
        expect(cold).toBeGreaterThanOrEqual(warm);
        expect(aged).toBeCloseTo(2 * cold, 12);
        expect(aged).toBeLessThan(10);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it('more cranking amperes, less resistance', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...CONDITIONS), (of, condition) => {
        const plain = { ...of, chemistry: 'leadAcid', ownOhm: null } as const;
        expect(batteryOhm({ ...plain, ccaA: of.ccaA * 1.1 }, condition)).toBeLessThan(batteryOhm(plain, condition));
      }),
      { seed: 9, numRuns: 100 },
    );
  });
});

describe('figures of the system', () => {
  it('12 V: six cells of 2.1 V at rest; 24 V is twice 12 V in everything', () => {
    const twelve = systemFigures(12);
    expect(twelve).toEqual({ inSeries: 1, restV: 12.6, chargingV: 14.4, cutOutV: 10.5, percentOfV: 12 });
    expect(twelve.restV).toBeCloseTo(6 * 2.1, 12);
    const twice = Object.values(twelve).map((value) => 2 * value);
    expect(Object.values(systemFigures(24))).toEqual(twice);
  });
});
