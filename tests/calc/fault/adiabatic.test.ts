import { describe, expect, it } from 'vitest';
import { ALL_GAUGES } from '../../../src/calc/conductor/gauge.ts';
import { adiabaticK, damageI2tA2s, damageI2tWhy } from '../../../src/calc/fault/adiabatic.ts';
import { damageSeconds } from '../../../src/calc/fault/damage.ts';
import { damageLimitC, insulationKind } from '../../../src/calc/tables/adiabatic.ts';
import { INSULATION_CLASSES_C } from '../../../src/calc/tables/ampacity.ts';
import { MATERIALS } from '../../../src/calc/tables/materials.ts';
import { gaugeId } from '../conductor/gaugeId.ts';
import { evaluateWhy } from '../evaluateWhy.ts';
import { AWG_4, faultConductor } from './conductors.ts';

describe('let-through that damages', () => {
  it('by hand: 4 AWG, 105 °C, from 60 °C', () => {
    // K^2 = 3.45e6 x 254.5 / 1.7241e-8 = 5.0926e16, K = 225.67; ln(394.5 / 294.5) = 0.29235; k = 122.02; x 21.151 mm2.
    expect(damageI2tA2s(AWG_4, 60)).toBeCloseTo((122.016 * 21.1506) ** 2, -4);
    expect(evaluateWhy(damageI2tWhy(AWG_4, 60))).toBeCloseTo(damageI2tA2s(AWG_4, 60), 2);
  });

  it('is what a short lets through until damage, when it is short', () => {
    const seconds = damageSeconds(faultConductor(AWG_4, 60, 60), 20_000);
    expect(seconds).toBeLessThan(0.02);
    expect((20_000 ** 2 * seconds) / damageI2tA2s(AWG_4, 60)).toBeCloseTo(1, 3);
  });

  it('is nothing for a conductor at its limit', () => {
    expect(damageI2tA2s(AWG_4, 160)).toBe(0);
    expect(damageI2tA2s(AWG_4, 200)).toBe(0);
    expect(adiabaticK('copper', 300, 160)).toBe(0);
  });

  it('has a why for every size and material', () => {
    for (const id of ALL_GAUGES)
      for (const material of MATERIALS) {
        const cable = { ...AWG_4, gauge: id, material };
        const found = damageI2tA2s(cable, 71.5);
        expect(evaluateWhy(damageI2tWhy(cable, 71.5)) / found).toBeCloseTo(1, 9);
      }
  });

  it('of clad wire is never above its metals by volume, and never above copper', () => {
    // By volume: 10 % x 3.45 + 90 % x 2.5 = 2.595 J/(K cm3) at 62.9 % IACS, 248 K: K = 153.2; 15 %: 2.6425, 64.4 %: 156.5.
    const k = (material: (typeof MATERIALS)[number]) => adiabaticK(material, 60, 160) / Math.sqrt(Math.log(388 / 288));
    expect(k('cca10')).toBeLessThan(153.2);
    expect(k('cca15')).toBeLessThan(156.5);
    // And never below aluminium right through, which has the lower conductivity.
    for (const material of ['cca10', 'cca15'] as const) expect(k(material)).toBeGreaterThan(k('aluminium'));
    const cca = damageI2tA2s({ ...AWG_4, material: 'cca10' }, 60);
    expect(cca / damageI2tA2s(AWG_4, 60)).toBeLessThan(0.46);
  });

  it('of a metric size counts the metal its resistance proves: below its nominal area', () => {
    const metric = damageI2tA2s({ ...AWG_4, gauge: gaugeId('mm2:25') }, 60);
    const k = adiabaticK('copper', 60, 160);
    expect(metric).toBeLessThan((k * 25) ** 2);
    expect(metric).toBeCloseTo((k * ((1.02 * 17.241) / 0.78)) ** 2, -3);
  });
});

describe('limits of insulation', () => {
  it('are 160 °C for PVC and 250 °C for thermoset up to 5 s, class + 50 K beyond, which is never the higher one', () => {
    for (const insulationC of INSULATION_CLASSES_C) {
      const short = insulationKind(insulationC) === 'pvc' ? 160 : 250;
      expect(damageLimitC(insulationC, 5)).toBe(short);
      expect(damageLimitC(insulationC, 5.001)).toBe(insulationC + 50);
      expect(insulationC + 50).toBeLessThanOrEqual(short);
    }
    expect(INSULATION_CLASSES_C.filter((each) => insulationKind(each) === 'thermoset')).toEqual([125, 200]);
  });
});
