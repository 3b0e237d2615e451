import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GaugeId } from '../../../src/calc/conductor/gauge.ts';
import { damageI2tA2s } from '../../../src/calc/fault/adiabatic.ts';
import {
  capacitorFuseRatio,
  capacitorFuseWhy,
  inrushA,
  prechargeOhm,
  rcTimeS,
  rcTimeWhy,
} from '../../../src/calc/supply/capacitor.ts';
import type { Material } from '../../../src/calc/tables/materials.ts';
import { whyValue } from '../../../src/calc/why.ts';
import { evaluateWhy } from '../evaluateWhy.ts';

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Sum of I^2 dt of a discharge through R and L, by small steps of the circuit's own equations (no formula of the energy). */
function steppedI2t(farads: number, volts: number, ohm: number, henry: number): number {
  let charge = farads * volts;
  let amps = 0;
  let sum = 0;
  const stepS = Math.min(henry / ohm, ohm * farads) / 500;
  for (let step = 0; step < 2_000_000 && (charge > 1e-5 * farads * volts || amps > 1e-4); step += 1) {
    amps += ((charge / farads - ohm * amps) / henry) * stepS;
    charge -= amps * stepS;
    sum += amps ** 2 * stepS;
  }
  return sum;
}

describe('a capacitor as a source', () => {
  /** PVC at its 70 degC, as the k of IEC 60364-4-43 table 43A has it: 115 copper, 76 aluminium. */
  const at70 = (size: 'mm2:1.5' | 'mm2:2.5' | 'mm2:35', material: Material = 'copper') => ({
    cable: { gauge: size as GaugeId, material, insulationC: 75 } as const,
    startC: 70,
  });
  /** What its largest resistance proves, mm2: IEC 60228 class 5, 13.3 and 7.98 ohm/km at 20 degC; stranding 1.02. */
  const metalMm2 = (ohmPerKm: number) => (1.02 * 17.241) / ohmPerKm;
  const loop = { farads: 1, volts: 14.4, loopOhm: 0.005, conductors: [at70('mm2:2.5')] };

  it('1 F, 14.4 V, 5 mohm: 20 736 A2s against k2 S2 of the metal in 2.5 mm2', () => {
    expect(capacitorFuseRatio(loop) / (20_736 / (115 * metalMm2(7.98)) ** 2)).toBeCloseTo(1, 2);
  });

  it('goes by the weakest conductor of the loop, wherever it stands', () => {
    const conductors = [at70('mm2:35'), at70('mm2:1.5', 'aluminium'), at70('mm2:1.5')];
    const expected = 20_736 / (76 * metalMm2(13.3)) ** 2;
    expect(capacitorFuseRatio({ ...loop, conductors }) / expected).toBeCloseTo(1, 1);
    expect(capacitorFuseRatio({ ...loop, conductors: conductors.toReversed() })).toBe(
      capacitorFuseRatio({ ...loop, conductors }),
    );
  });

  it('I2t = C V2 / (2 R) against the discharge stepped through time, with inductance', () => {
    const stepped = steppedI2t(1, 14.4, 0.05, 0.0005);
    expect(stepped / ((1 * 14.4 ** 2) / (2 * 0.05))).toBeCloseTo(1, 2);
  });

  it('is at 1 exactly where the share of the energy heats the conductor to its limit', () => {
    // energy into the conductor: C V2 / 2 x Rc / R; what it bears: k2 S2 Rc
    fc.assert(
      fc.property(
        range(0.001, 10_000),
        range(1, 32),
        range(1e-4, 1),
        fc.constantFrom('mm2:0.5', 'sae:8', 'awg:2', 'mm2:120'),
        range(-20, 150),
        (farads, volts, ohm, size, startC) => {
          const cable = { gauge: size as GaugeId, material: 'copper', insulationC: 105 } as const;
          const conductorOhm = ohm / 3;
          const gets = ((farads * volts ** 2) / 2) * (conductorOhm / ohm);
          const bears = damageI2tA2s(cable, startC) * conductorOhm;
          const ratio = capacitorFuseRatio({ farads, volts, loopOhm: ohm, conductors: [{ cable, startC }] });
          expect(ratio / (gets / bears)).toBeCloseTo(1, 9);
          const why = capacitorFuseWhy({ farads, volts, loopOhm: ohm, conductors: [{ cable, startC }] });
          expect(whyValue(why)).toBe(ratio);
          expect(evaluateWhy(why) / ratio).toBeCloseTo(1, 9);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  it('refuses a loop without conductor or resistance', () => {
    expect(() => capacitorFuseRatio({ ...loop, conductors: [] })).toThrow(RangeError);
    expect(() => capacitorFuseRatio({ ...loop, loopOhm: 0 })).toThrow(RangeError);
    expect(() => inrushA(12, 0)).toThrow(RangeError);
    expect(() => prechargeOhm(12, 0)).toThrow(RangeError);
    expect(() => rcTimeS({ farads: 1, ohm: 1, fromV: 12, toV: 0 })).toThrow(RangeError);
  });
});

describe('filling and emptying', () => {
  it('textbook: one time constant leaves 36.8 %, five leave 0.67 %', () => {
    expect(rcTimeS({ farads: 1, ohm: 30, fromV: 1, toV: 0.36788 })).toBeCloseTo(30, 3);
    expect(rcTimeS({ farads: 1, ohm: 30, fromV: 1, toV: 0.0067379 })).toBeCloseTo(150, 3);
  });

  it('1 F through 30 ohm, 14.4 V, to 5 % left: 90 s', () => {
    const of = { farads: 1, ohm: 30, fromV: 14.4, toV: 0.72 };
    expect(rcTimeS(of)).toBeCloseTo(89.9, 1);
    expect(evaluateWhy(rcTimeWhy(of))).toBeCloseTo(rcTimeS(of), 9);
  });

  it('is there at once when it has less to go than is allowed', () => {
    for (const fromV of [0, 0.5]) {
      expect(rcTimeS({ farads: 1, ohm: 30, fromV, toV: 0.72 })).toBe(0);
    }
    expect(evaluateWhy(rcTimeWhy({ farads: 1, ohm: 30, fromV: 0.5, toV: 0.72 }))).toBe(0);
  });

  it('against the charging stepped through time', () => {
    fc.assert(
      fc.property(range(0.01, 100), range(1, 1000), range(2, 30), range(0.05, 1), (farads, ohm, fromV, toV) => {
        const stepS = (ohm * farads) / 20_000;
        let left = fromV;
        let time = 0;
        while (left > toV) {
          left -= (left / ohm / farads) * stepS;
          time += stepS;
        }
        expect(time / rcTimeS({ farads, ohm, fromV, toV })).toBeCloseTo(1, 2);
      }),
      { seed: 12, numRuns: 30 },
    );
  });

  it('a resistor for half a watt is as good as any: 14.4^2 / 0.5 = 414.7 ohm', () => {
    expect(prechargeOhm(14.4, 0.5)).toBeCloseTo(414.72, 9);
  });

  it('inrush and the resistor that tames it', () => {
    expect(inrushA(12.6, 0.005)).toBeCloseTo(2520, 9);
    expect(prechargeOhm(14.4, 7)).toBeCloseTo(29.62, 2);
    // with that resistor the first instant takes just the power it was chosen for
    expect(inrushA(14.4, prechargeOhm(14.4, 7)) ** 2 * prechargeOhm(14.4, 7)).toBeCloseTo(7, 9);
  });
});
