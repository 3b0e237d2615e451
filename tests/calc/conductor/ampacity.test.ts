import { describe, expect, it } from 'vitest';
import { type AmpacityCase, ampacityA, ampacityWhy } from '../../../src/calc/conductor/ampacity.ts';
import { ALL_GAUGES, gauge, gaugesOf } from '../../../src/calc/conductor/gauge.ts';
import { INSULATION_CLASSES_C } from '../../../src/calc/tables/ampacity.ts';
import table5 from '../../fixtures/published/cfr183425Table5.json' with { type: 'json' };
import examples from '../../fixtures/published/workedExamples.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

const free = (id: string, change: Partial<AmpacityCase> = {}): AmpacityCase => ({
  gauge: gaugeId(id),
  material: 'copper',
  insulationC: 105,
  zone: 'other',
  ambientC: 30,
  loom: false,
  carpet: false,
  ...change,
});

describe('ampacity against 33 CFR 183.425 Table 5, 30 °C', () => {
  it.each(table5.rows)('$awg AWG, every class', ({ awg, amps }) => {
    const found = INSULATION_CLASSES_C.map((insulationC) => ampacityA(free(`awg:${awg}`, { insulationC })));
    expect(found).toEqual(amps);
  });
});

describe('ampacity in the engine bay', () => {
  it.each(examples.engineSpace.rows)(
    '33 CFR 183.425 note 1 as printed in a marine Table E: $awg AWG, 105 °C carries $printedA A (cut to whole amps)',
    ({ awg, printedA }) => {
      expect(Math.floor(ampacityA(free(`awg:${awg}`, { zone: 'bay', ambientC: 80 })))).toBe(printedA);
    },
  );

  it('has none left where the air is as hot as the class', () => {
    expect(ampacityA(free('awg:4', { zone: 'bay', insulationC: 60, ambientC: 80 }))).toBe(0);
    expect(ampacityA(free('awg:4', { zone: 'bay', insulationC: 80, ambientC: 80 }))).toBe(0);
    expect(ampacityA(free('awg:4', { insulationC: 60, ambientC: 60 }))).toBe(0);
    expect(ampacityA(free('awg:4', { insulationC: 60, ambientC: 90 }))).toBe(0);
  });
});

describe('ampacity elsewhere', () => {
  it('falls with the square root of the headroom and never rises above the table', () => {
    expect(ampacityA(free('awg:4', { ambientC: 50 }))).toBeCloseTo(160 * Math.sqrt(55 / 75), 9);
    expect(ampacityA(free('awg:4', { ambientC: -20 }))).toBe(160);
  });

  it('falls with the square root of the area for SAE sizes', () => {
    expect(ampacityA(free('sae:4'))).toBeCloseTo(160 * Math.sqrt(37360 / 41741.3), 3);
    expect(ampacityA(free('sae:3'))).toBeCloseTo(180 * Math.sqrt(0.893), 9);
  });

  it('falls in proportion to the area below 18 AWG', () => {
    expect(ampacityA(free('awg:20'))).toBeCloseTo((20 * 0.5176) / 0.823, 2);
    expect(ampacityA(free('sae:20'))).toBeCloseTo((20 * 0.893 * 0.5176) / 0.823, 2);
    expect(ampacityA(free('mm2:0.5'))).toBeCloseTo((20 * 0.5) / 0.823, 2);
  });

  it('goes straight in ln I on ln S between the rows for metric sizes', () => {
    // 25 mm2 lies between 4 AWG (21.1506 mm2, 160 A) and 3 AWG (26.6705 mm2, 180 A).
    const share = Math.log(25 / 21.1506) / Math.log(26.6705 / 21.1506);
    expect(ampacityA(free('mm2:25'))).toBeCloseTo(Math.exp(Math.log(160) + share * Math.log(180 / 160)), 3);
    expect(ampacityA(free('mm2:120'))).toBe(445);
  });

  it('takes the material and the wrapping into account', () => {
    expect(ampacityA(free('awg:1/0', { material: 'cca10' }))).toBeCloseTo(285 * 0.793, 9);
    expect(ampacityA(free('awg:1/0', { material: 'cca15' }))).toBeCloseTo(285 * 0.802, 9);
    expect(ampacityA(free('awg:1/0', { material: 'aluminium' }))).toBeCloseTo(285 * 0.781, 9);
    expect(ampacityA(free('awg:1/0', { loom: true }))).toBeCloseTo(285 * 0.82, 9);
    expect(ampacityA(free('awg:1/0', { carpet: true }))).toBeCloseTo(285 * 0.65, 9);
    expect(ampacityA(free('awg:1/0', { carpet: true, loom: true }))).toBeCloseTo(285 * 0.65, 9);
  });

  it('never falls with a larger conductor of the same system', () => {
    for (const system of ['sae', 'awg', 'mm2'] as const) {
      for (const insulationC of INSULATION_CLASSES_C) {
        const amps = gaugesOf(system).map((id) => ampacityA(free(id, { insulationC })));
        expect(amps, `${system} ${insulationC} °C`).toEqual([...amps].sort((a, b) => a - b));
      }
    }
  });
});

describe('why of an ampacity', () => {
  it.each(ALL_GAUGES)('%s gives the figure shown, in both zones and without headroom', (id) => {
    for (const zone of ['bay', 'other'] as const) {
      for (const ambientC of [50, 80]) {
        for (const material of ['copper', 'cca10'] as const) {
          const of = free(id, { zone, ambientC, material, insulationC: 80, loom: true });
          expect(evaluateWhy(ampacityWhy(of))).toBeCloseTo(ampacityA(of), 9);
        }
      }
    }
  });

  it('starts from the table row and names it', () => {
    const table = ampacityWhy(free('sae:2')).steps.find(({ symbol }) => symbol === 'Itable');
    expect(table).toMatchObject({ value: 210, source: 'cfr183425Table5' });
    expect(gauge(gaugeId('sae:2')).label).toBe('2');
  });
});
