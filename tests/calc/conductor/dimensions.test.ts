import { describe, expect, it } from 'vitest';
import {
  leastBendMm,
  leastBendWhy,
  massKgPerM,
  massWhy,
  outsideMm,
  outsideWhy,
} from '../../../src/calc/conductor/dimensions.ts';
import { ALL_GAUGES, gauge, gaugesOf } from '../../../src/calc/conductor/gauge.ts';
import { provenGauge, strandsAreaMm2, strandsAreaWhy } from '../../../src/calc/conductor/strands.ts';
import { metalAreaMm2 } from '../../../src/calc/conductor/thermal.ts';
import { SOURCES } from '../../../src/calc/sources.ts';
import { MATERIALS } from '../../../src/calc/tables/materials.ts';
import printed from '../../fixtures/published/iso6722Outside.json' with { type: 'json' };
import nec from '../../fixtures/published/necCh9Table8.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

describe('outside diameter', () => {
  it.each(printed.rows)(
    'ISO 6722, $areaMm2 mm²: $outsideMm mm ($trust)',
    ({ areaMm2, outsideMm: printedMm, trust }) => {
      const id = gaugeId(`mm2:${areaMm2}`);
      expect(outsideMm(id)).toBe(printedMm);
      const source = outsideWhy(id).steps.find(({ symbol }) => symbol === 'Dlisted')?.source;
      expect(SOURCES[source ?? 'feedrunRules'].trust).toBe(trust);
    },
  );

  it('by hand: SAE 4: sqrt(4 x 18.931 / (0.6 pi)) + 2 x 1.52 = 9.38 mm', () => {
    expect(outsideMm(gaugeId('sae:4'))).toBeCloseTo(6.338 + 3.04, 2);
  });

  it('by hand: 10 mm², in neither list: sqrt(4 x 10 / (0.6 pi)) + 2 x 1.3 = 7.21 mm', () => {
    expect(outsideMm(gaugeId('mm2:10'))).toBeCloseTo(4.607 + 2.6, 2);
  });

  it('is thicker than the bare strands of NEC Chapter 9 Table 8 and grows with the size', () => {
    for (const { awg } of nec.rows) {
      const bareMm = 2 * Math.sqrt(gauge(gaugeId(`awg:${awg}`)).areaMm2 / Math.PI);
      expect(outsideMm(gaugeId(`awg:${awg}`))).toBeGreaterThan(bareMm * 1.1);
    }
    for (const system of ['sae', 'awg', 'mm2'] as const) {
      const across = gaugesOf(system).map(outsideMm);
      expect(across).toEqual([...across].sort((one, other) => one - other));
    }
  });

  it('is worked out again from its why', () => {
    for (const id of ALL_GAUGES) expect(evaluateWhy(outsideWhy(id))).toBeCloseTo(outsideMm(id), 9);
  });
});

describe('bend', () => {
  it('is 5 diameters by NEC 551.47(H), 10 by the aircraft rule for bundles', () => {
    expect(leastBendMm(10.4)).toBe(52);
    expect(leastBendMm(10.4, 'faa')).toBe(104);
    expect(evaluateWhy(leastBendWhy(10.4))).toBe(52);
    expect(evaluateWhy(leastBendWhy(10.4, 'faa', { outsideMm: { origin: 'measured' } }))).toBe(104);
  });
  it.each([
    ['nec', 'NFPA 70 (NEC) 551.47(H)', 'published'],
    ['faa', 'FAA AC 43.13-1B', 'memory'],
    ['faaTerminal', 'FAA AC 43.13-1B', 'memory'],
  ] as const)('%s: names %s, trusted as %s', (rule, document, trust) => {
    const times = leastBendWhy(10, rule).steps.find(({ symbol }) => symbol === 'kBend');
    expect(SOURCES[times?.source ?? 'feedrunRules']).toMatchObject({ document, trust });
  });
});

describe('mass', () => {
  it('by hand: 4 AWG copper', () => {
    // Metal 1.02 x 21.151 mm2 x 8.89 g/cm3 = 191.8 g/m; sheath: (pi/4 x 9.740^2 - 21.151 / 0.6) mm2 x 1.4 = 55.0 g/m.
    expect(massKgPerM(gaugeId('awg:4'), 'copper')).toBeCloseTo(0.2468, 3);
  });
  it('of clad wire lies between aluminium and copper, the thicker skin the heavier', () => {
    const mass = (material: (typeof MATERIALS)[number]) => massKgPerM(gaugeId('awg:1/0'), material);
    expect(mass('aluminium')).toBeLessThan(mass('cca10'));
    expect(mass('cca10')).toBeLessThan(mass('cca15'));
    expect(mass('cca15')).toBeLessThan(mass('copper') / 1.5);
  });
  it('is worked out again from its why', () => {
    for (const id of ALL_GAUGES)
      for (const material of MATERIALS)
        expect(evaluateWhy(massWhy(id, material))).toBeCloseTo(massKgPerM(id, material), 9);
  });
});

describe('counted strands', () => {
  it('by hand: 196 strands of 0.40 mm: 196 x pi / 4 x 0.16 = 24.63 mm²', () => {
    expect(strandsAreaMm2(196, 0.4)).toBeCloseTo(24.63, 2);
    expect(evaluateWhy(strandsAreaWhy(196, 0.4, { count: { origin: 'measured' } }))).toBeCloseTo(24.63, 2);
  });

  it('prove a size from 2 % less, since strand diameters are printed rounded', () => {
    expect(provenGauge(0.98 * gauge(gaugeId('awg:4')).areaMm2, 'awg')).toBe('awg:4');
    expect(provenGauge(0.9799 * gauge(gaugeId('awg:4')).areaMm2, 'awg')).toBe('awg:6');
  });

  it('prove the size their metal amounts to, never the next', () => {
    expect(provenGauge(24.63, 'mm2')).toBe('mm2:25');
    expect(provenGauge(24.63, 'awg')).toBe('awg:4');
    expect(provenGauge(24.63, 'sae')).toBe('sae:3');
    // Sold as 4 AWG, 400 strands of 0.20 mm: no more than an SAE 6.
    expect(provenGauge(strandsAreaMm2(400, 0.2), 'sae')).toBe('sae:6');
    expect(provenGauge(0.1, 'sae')).toBeNull();
    for (const system of ['sae', 'awg', 'mm2'] as const)
      for (const id of gaugesOf(system)) {
        const needs = system === 'mm2' ? metalAreaMm2({ gauge: id, material: 'copper' }) : gauge(id).areaMm2;
        expect(provenGauge(needs, system)).toBe(id);
        expect(provenGauge(needs * 0.979, system)).not.toBe(id);
      }
  });
});
