import { describe, expect, it } from 'vitest';
import {
  ALL_GAUGES,
  DEFAULT_STOCK,
  type GaugeId,
  gauge,
  gaugesOf,
  isGaugeId,
} from '../../../src/calc/conductor/gauge.ts';
import { gaugeId } from './gaugeId.ts';

describe('gauges', () => {
  it('knows AWG and SAE 20 to 4/0 and metric 0.5 to 120 mm², each system ascending', () => {
    expect(ALL_GAUGES).toHaveLength(16 + 16 + 15);
    for (const system of ['sae', 'awg', 'mm2'] as const) {
      const areas = gaugesOf(system).map((id) => gauge(id).areaMm2);
      expect(areas).toEqual([...areas].sort((a, b) => a - b));
    }
    expect(gaugesOf('sae')[0]).toBe('sae:20');
    expect(gaugesOf('mm2').at(-1)).toBe('mm2:120');
  });

  it('tells an id from any other text', () => {
    expect(isGaugeId('sae:1/0')).toBe(true);
    for (const text of ['sae:5', '4', 'awg:', 'mm2:12', 'constructor', '']) expect(isGaugeId(text)).toBe(false);
  });

  it('gives less copper by SAE than by AWG of the same number', () => {
    for (const id of gaugesOf('sae')) {
      const share = gauge(id).areaMm2 / gauge(gaugeId(`awg:${gauge(id).label}`)).areaMm2;
      expect(share).toBeGreaterThan(0.89);
      expect(share).toBeLessThan(0.972);
    }
  });

  it('gives each area in square metres too', () => {
    expect(gauge(gaugeId('sae:4')).areaM2).toBeCloseTo(18.931e-6, 9);
    expect(gauge(gaugeId('mm2:25')).areaM2).toBeCloseTo(25e-6, 15);
  });

  it('refuses a size that it does not know', () => {
    expect(() => gauge('sae:5' as GaugeId)).toThrow(RangeError);
  });

  it('stocks what the rules say', () => {
    expect(DEFAULT_STOCK.sae).toEqual(['sae:8', 'sae:4', 'sae:2', 'sae:1/0', 'sae:2/0', 'sae:4/0']);
    expect(DEFAULT_STOCK.awg).toEqual(['awg:8', 'awg:4', 'awg:2', 'awg:1/0', 'awg:2/0', 'awg:4/0']);
    expect(DEFAULT_STOCK.mm2.map((id) => gauge(id).areaMm2)).toEqual([10, 16, 25, 35, 50, 70, 95, 120]);
    for (const id of Object.values(DEFAULT_STOCK).flat()) expect(isGaugeId(id)).toBe(true);
  });
});
