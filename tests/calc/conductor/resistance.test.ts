import { describe, expect, it } from 'vitest';
import { ALL_GAUGES } from '../../../src/calc/conductor/gauge.ts';
import { resistancePerMOhm, resistanceWhy } from '../../../src/calc/conductor/resistance.ts';
import { MATERIALS } from '../../../src/calc/tables/materials.ts';
import class5 from '../../fixtures/published/iec60228Class5.json' with { type: 'json' };
import nec from '../../fixtures/published/necCh9Table8.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

const M_PER_KFT = 304.8;

describe('resistance against NEC Chapter 9 Table 8, stranded, 75 °C', () => {
  it.each(nec.rows)('$awg AWG copper: $copperOhmPerKft ohm per 1000 ft within 0.6 %', ({ awg, copperOhmPerKft }) => {
    const found = resistancePerMOhm(gaugeId(`awg:${awg}`), 'copper', nec.temperatureC) * M_PER_KFT;
    expect(Math.abs(found / copperOhmPerKft - 1)).toBeLessThan(0.006);
  });
  it.each(nec.rows)(
    '$awg AWG aluminium: $aluminiumOhmPerKft ohm per 1000 ft within 1 %',
    ({ awg, aluminiumOhmPerKft }) => {
      const found = resistancePerMOhm(gaugeId(`awg:${awg}`), 'aluminium', nec.temperatureC) * M_PER_KFT;
      expect(Math.abs(found / aluminiumOhmPerKft - 1)).toBeLessThan(0.01);
    },
  );
});

describe('resistance against IEC 60228 class 5, plain copper, 20 °C', () => {
  it.each(class5.rows)('$areaMm2 mm²: $ohmPerKm ohm/km, held exactly', ({ areaMm2, ohmPerKm }) => {
    const found = resistancePerMOhm(gaugeId(`mm2:${areaMm2}`), 'copper', class5.temperatureC);
    expect(found * 1000).toBeCloseTo(ohmPerKm, 9);
  });
});

describe('material and temperature', () => {
  it('follows (234.5 + T) for copper and (228 + T) for aluminium and clad wire', () => {
    const ratio = (material: (typeof MATERIALS)[number]) =>
      resistancePerMOhm(gaugeId('awg:4'), material, 100) / resistancePerMOhm(gaugeId('awg:4'), material, 20);
    expect(ratio('copper')).toBeCloseTo(334.5 / 254.5, 9);
    for (const material of ['aluminium', 'cca10', 'cca15'] as const) expect(ratio(material)).toBeCloseTo(328 / 248, 9);
  });

  it('rises by the least conductivity ASTM B566 allows: 62.9 and 64.4 % IACS', () => {
    const at20 = (material: (typeof MATERIALS)[number]) => resistancePerMOhm(gaugeId('sae:1/0'), material, 20);
    expect(at20('cca10') / at20('copper')).toBeCloseTo(1.59, 2);
    expect(at20('cca15') / at20('copper')).toBeCloseTo(1.553, 3);
    expect(at20('aluminium') / at20('copper')).toBeCloseTo(2.8264 / 1.7241, 4);
  });

  it('gives an SAE size as much more as it has less copper', () => {
    const sae = resistancePerMOhm(gaugeId('sae:4'), 'copper', 20);
    expect(sae / resistancePerMOhm(gaugeId('awg:4'), 'copper', 20)).toBeCloseTo(21.1506 / 18.931, 3);
  });
});

describe('why of a resistance', () => {
  it.each(ALL_GAUGES)('%s gives the figure shown, in every material', (id) => {
    for (const material of MATERIALS) {
      const why = resistanceWhy(id, material, 61.5, { conductorC: { origin: 'assumed' } });
      expect(evaluateWhy(why)).toBeCloseTo(resistancePerMOhm(id, material, 61.5), 12);
      expect(why.steps.find(({ symbol }) => symbol === 'T')?.origin).toBe('assumed');
    }
  });
});
