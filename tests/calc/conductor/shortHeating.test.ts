import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL_GAUGES, gauge, gaugesOf } from '../../../src/calc/conductor/gauge.ts';
import { steadyTemperatureC } from '../../../src/calc/conductor/heating.ts';
import { resistancePerMOhm } from '../../../src/calc/conductor/resistance.ts';
import {
  currentReachingA,
  type Surroundings,
  secondsToReach,
  secondsToReachWhy,
  temperatureAfterC,
  temperatureAfterWhy,
  timeConstantS,
} from '../../../src/calc/conductor/shortHeating.ts';
import type { Cable } from '../../../src/calc/conductor/tableCurrent.ts';
import { type Thermal, thermalOf, thermalWhy } from '../../../src/calc/conductor/thermal.ts';
import { slowestWhy } from '../../../src/calc/fuse/timeCurrent.ts';
import { INSULATION_CLASSES_C } from '../../../src/calc/tables/ampacity.ts';
import { MATERIALS } from '../../../src/calc/tables/materials.ts';
import { evaluateWhy } from '../evaluateWhy.ts';
import { gaugeId } from './gaugeId.ts';

const AWG_4: Cable = { gauge: gaugeId('awg:4'), material: 'copper', insulationC: 105 };
const AT_50: Surroundings = { startC: 50, ambientC: 50 };

const cables = fc.record({
  gauge: fc.constantFrom(...gaugesOf('sae'), ...gaugesOf('awg'), ...gaugesOf('mm2')),
  material: fc.constantFrom(...MATERIALS),
  insulationC: fc.constantFrom(...INSULATION_CLASSES_C),
  carpet: fc.boolean(),
});
const surroundings = fc.record({
  startC: fc.double({ min: -20, max: 150, noNaN: true }),
  ambientC: fc.double({ min: -20, max: 110, noNaN: true }),
});
/** Currents by the table's own, which spans gentle warming, the current without a steady state, and a dead short. */
const multiples = fc.double({ min: 0.05, max: 40, noNaN: true });

/** The table's current, worked back from the balance it stands for. */
function tableA(cable: Cable): number {
  const { lossWPerMK } = thermalOf(cable);
  const hot = resistancePerMOhm(cable.gauge, cable.material, cable.insulationC);
  return Math.sqrt((lossWPerMK * (cable.insulationC - 30)) / hot);
}

/** The same balance stepped forward by Runge and Kutta's fourth order: knows nothing of the closed form. */
function stepped(cable: Cable, currentA: number, seconds: number, at: Surroundings): number {
  const { heatJPerMK, lossWPerMK } = thermalOf(cable);
  const slope = (atC: number): number =>
    (currentA ** 2 * resistancePerMOhm(cable.gauge, cable.material, atC) - lossWPerMK * (atC - at.ambientC)) /
    heatJPerMK;
  const steps = 2000;
  const h = seconds / steps;
  let now = at.startC;
  for (let step = 0; step < steps; step += 1) {
    const k1 = slope(now);
    const k2 = slope(now + (h / 2) * k1);
    const k3 = slope(now + (h / 2) * k2);
    const k4 = slope(now + h * k3);
    now += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return now;
}

describe('temperature through time', () => {
  it('by hand: 4 AWG, 1000 A for 1 s from 50 °C', () => {
    // 21.151 mm2: C = 1.02 x 3.45e6 x 21.151e-6 = 74.43 J/(m K); r20 = 1.02 x 1.7241e-8 / 21.151e-6 = 8.3146e-4 ohm/m.
    // Made at 50 degC: 1e6 x 8.3146e-4 x 284.5 / 254.5 = 929.5 W/m, so 12.49 K/s at the start. Adiabatic:
    // 284.5 x exp(1e6 x 8.3146e-4 / 254.5 / 74.43) - 234.5 = 284.5 x e^0.043895 - 234.5 = 62.77 degC, and a little less
    // with G = 160^2 x 8.3146e-4 x 339.5 / 254.5 / 75 = 0.3786 W/(m K) shed.
    expect(temperatureAfterC(thermalOf(AWG_4), 1000, 1, AT_50)).toBeCloseTo(62.73, 2);
  });

  it('agrees with Runge-Kutta steps of the same balance, growing, level and settling', () => {
    fc.assert(
      fc.property(
        cables,
        multiples,
        surroundings,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (cable, m, at, part) => {
          const thermal = thermalOf(cable);
          const amps = m * tableA(cable);
          // Up to a rise of a few hundred kelvin, where a stepped solution is still exact.
          const seconds = part * Math.min(1e4, secondsToReach(thermal, amps, 400, at));
          const found = temperatureAfterC(thermal, amps, seconds, at);
          expect(Math.abs(found - stepped(cable, amps, seconds, at))).toBeLessThan(1e-6 * Math.max(1, Math.abs(found)));
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it('rises with current and, above where it started, with time', () => {
    fc.assert(
      fc.property(
        cables,
        multiples,
        multiples,
        surroundings,
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        (cable, m1, m2, at, s) => {
          const [thermal, base] = [thermalOf(cable), tableA(cable)];
          const [low, high] = [Math.min(m1, m2) * base, Math.max(m1, m2) * base];
          const cooler = temperatureAfterC(thermal, low, s, at);
          expect(temperatureAfterC(thermal, high, s, at)).toBeGreaterThanOrEqual(cooler - 1e-9);
          const later = temperatureAfterC(thermal, low, s * 1.5, at);
          const start = Math.min(at.startC, thermal.meltingC);
          if (cooler > start) expect(later).toBeGreaterThanOrEqual(cooler - 1e-9);
          else expect(later).toBeLessThanOrEqual(cooler + 1e-9);
        },
      ),
      { seed: 2, numRuns: 300 },
    );
  });

  it('settles at the steady temperature, and melts where there is none', () => {
    fc.assert(
      fc.property(cables, multiples, surroundings, (cable, m, at) => {
        const amps = m * tableA(cable);
        const thermal = thermalOf(cable);
        const steady = steadyTemperatureC(amps, { ...cable, ambientC: at.ambientC });
        const end = temperatureAfterC(thermal, amps, Number.POSITIVE_INFINITY, at);
        if (steady === null || steady > thermal.meltingC) expect(end).toBe(thermal.meltingC);
        else expect(end).toBeCloseTo(steady, 6);
        expect(timeConstantS(thermal, amps) === null).toBe(steady === null);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('is the adiabatic formula in short times: I² t = C (beta + 20) / r20 ln((T + beta) / (Tstart + beta))', () => {
    fc.assert(
      fc.property(cables, surroundings, (cable, at) => {
        const { heatJPerMK, ohmPerM20, betaC, ...rest } = thermalOf(cable);
        const amps = 1e6 * Math.sqrt(gauge(cable.gauge).areaMm2);
        const thermal = { heatJPerMK, ohmPerM20, betaC, ...rest };
        const target = at.startC + 50;
        const letThrough = ((heatJPerMK * (betaC + 20)) / ohmPerM20) * Math.log((target + betaC) / (at.startC + betaC));
        expect((amps ** 2 * secondsToReach(thermal, amps, target, at)) / letThrough).toBeCloseTo(1, 5);
      }),
      { seed: 4, numRuns: 100 },
    );
  });

  it('has no seam where heat made and heat shed per kelvin are equal', () => {
    const thermal = thermalOf(AWG_4);
    const level = Math.sqrt((thermal.lossWPerMK * (thermal.betaC + 20)) / thermal.ohmPerM20);
    expect(level / 160).toBeCloseTo(Math.sqrt(339.5 / 75), 9);
    const at = (amps: number) => temperatureAfterC(thermal, amps, 20, AT_50);
    const reach = (amps: number) => secondsToReach(thermal, amps, 155, AT_50);
    // On the level line itself: straight, (beta + Ta) lambda t.
    expect(at(level)).toBeCloseTo(50 + (thermal.lossWPerMK / thermal.heatJPerMK) * 284.5 * 20, 6);
    for (const off of [1e-15, 1e-13, 1e-12, 1e-11, 1e-9, 1e-7]) {
      for (const amps of [level * (1 - off), level * (1 + off)]) {
        expect(Math.abs(at(amps) - at(level))).toBeLessThan(1e-8 + 200 * off);
        expect(Math.abs(reach(amps) - reach(level))).toBeLessThan(1e-8 + 300 * off);
      }
    }
  });

  it('is a series in lambda t close to the level line: 1 - x / 2 + x^2 / 6 of the straight one', () => {
    const thermal = thermalOf(AWG_4);
    const level = Math.sqrt((thermal.lossWPerMK * (thermal.betaC + 20)) / thermal.ohmPerM20);
    for (const off of [-1e-5, 1e-5]) {
      const made = thermal.lossWPerMK * (1 + off) ** 2;
      const x = (20 * (thermal.lossWPerMK - made)) / thermal.heatJPerMK;
      const rise = ((made * 284.5 * 20) / thermal.heatJPerMK) * (1 - x / 2 + x ** 2 / 6);
      expect(temperatureAfterC(thermal, level * (1 + off), 20, AT_50)).toBeCloseTo(50 + rise, 9);
      expect(secondsToReach(thermal, level * (1 + off), 50 + rise, AT_50)).toBeCloseTo(20, 9);
    }
  });

  it('cools towards the air without current, and stays where it is in balance', () => {
    const thermal = thermalOf(AWG_4);
    expect(temperatureAfterC(thermal, 0, 1e6, { startC: 90, ambientC: 40 })).toBeCloseTo(40, 9);
    expect(temperatureAfterC(thermal, 0, 100, AT_50)).toBe(50);
    expect(temperatureAfterC(thermal, 500, 0, AT_50)).toBe(50);
    expect(secondsToReach(thermal, 0, 60, AT_50)).toBe(Number.POSITIVE_INFINITY);
    expect(secondsToReach(thermal, 0, 50, AT_50)).toBe(0);
  });

  it('is never above the melting point, whatever the current and time', () => {
    for (const seconds of [1, 1e3, 1e9, Number.POSITIVE_INFINITY])
      for (const amps of [1e3, 1e5, 1e9]) {
        const end = temperatureAfterC(thermalOf(AWG_4), amps, seconds, AT_50);
        expect(end).toBeGreaterThan(50);
        expect(end).toBeLessThanOrEqual(1083);
      }
  });
});

describe('time to a temperature', () => {
  it('is the inverse of the temperature through time', () => {
    fc.assert(
      fc.property(
        cables,
        multiples,
        surroundings,
        fc.double({ min: 1, max: 400, noNaN: true }),
        (cable, m, at, rise) => {
          const thermal = thermalOf(cable);
          const amps = m * tableA(cable);
          const seconds = secondsToReach(thermal, amps, at.startC + rise, at);
          if (seconds === Number.POSITIVE_INFINITY) {
            const end = temperatureAfterC(thermal, amps, seconds, at);
            expect(end).toBeLessThanOrEqual(at.startC + rise + 1e-6);
          } else expect(temperatureAfterC(thermal, amps, seconds, at)).toBeCloseTo(at.startC + rise, 6);
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('a lump in round numbers, by hand', () => {
  // beta + 20 = 256, so 16 A make 0.5 W/(m K), just what is shed: dT/dt = 0.5 (236 + 20) / 64 = 2 K/s, for ever
  const lump: Thermal = { heatJPerMK: 64, lossWPerMK: 0.5, ohmPerM20: 0.5, betaC: 236, meltingC: 1083 };
  const at20: Surroundings = { startC: 20, ambientC: 20 };

  it('rises in a straight line where heat made and heat shed per kelvin are equal', () => {
    expect(temperatureAfterC(lump, 16, 30, at20)).toBe(80);
    expect(temperatureAfterC(lump, 16, Number.POSITIVE_INFINITY, at20)).toBe(1083);
    expect(secondsToReach(lump, 16, 80, at20)).toBe(30);
    expect(currentReachingA(lump, 30, 80, at20)).toBeCloseTo(16, 12);
    expect(timeConstantS(lump, 16)).toBeNull();
  });

  it('settles at 1/3 of the made heat: 8 A make 0.125 W/(m K): 20 + 0.125 x 256 / 0.375 = 105 1/3 °C, 170 2/3 s', () => {
    expect(timeConstantS(lump, 8)).toBeCloseTo(64 / 0.375, 9);
    expect(temperatureAfterC(lump, 8, Number.POSITIVE_INFINITY, at20)).toBeCloseTo(20 + 256 / 3, 9);
    expect(secondsToReach(lump, 8, 20 + 256 / 6, at20)).toBeCloseTo((64 / 0.375) * Math.LN2, 9);
    expect(currentReachingA(lump, (64 / 0.375) * Math.LN2, 20 + 256 / 6, at20)).toBeCloseTo(8, 12);
  });

  it('needs no current where the air alone brings it there: from 20 °C in 100 °C half way in C / G ln 2', () => {
    const at: Surroundings = { startC: 20, ambientC: 100 };
    const halfS = 128 * Math.LN2;
    expect(currentReachingA(lump, halfS, 59, at)).toBe(0);
    expect(currentReachingA(lump, halfS, 61, at)).toBeGreaterThan(0);
    expect(currentReachingA(lump, 1e6, 61, at)).toBe(0);
  });

  it('takes the steady current where there is all the time: 8 A for 105 1/3 °C', () => {
    expect(currentReachingA(lump, 1e9, 20 + 256 / 3, at20)).toBeCloseTo(8, 6);
  });
});

describe('current to a temperature', () => {
  it('is the inverse of the temperature through time, in the current', () => {
    fc.assert(
      fc.property(
        cables,
        surroundings,
        fc.double({ min: 0.01, max: 2000, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (cable, at, seconds, rise) => {
          const thermal = thermalOf(cable);
          const targetC = at.startC + rise;
          const amps = currentReachingA(thermal, seconds, targetC, at);
          if (amps === 0) expect(temperatureAfterC(thermal, 0, seconds, at)).toBeGreaterThanOrEqual(targetC - 1e-9);
          else expect(temperatureAfterC(thermal, amps, seconds, at)).toBeCloseTo(targetC, 9);
        },
      ),
      { seed: 8, numRuns: 500 },
    );
  });

  it('by hand: 4 AWG to 160 °C in 7.6 s; nothing where it is that hot already', () => {
    expect(currentReachingA(thermalOf(AWG_4), 7.6, 160, AT_50)).toBeCloseTo(1000, -1);
    for (const targetC of [40, 50]) expect(currentReachingA(thermalOf(AWG_4), 5, targetC, AT_50)).toBe(0);
    // nor where it starts too hot and the air would have cooled it down by then
    expect(currentReachingA(thermalOf(AWG_4), 1000, 100, { startC: 120, ambientC: 20 })).toBe(0);
  });
});

describe('time constant', () => {
  it('is C / G without current, and 63 % of the rise is done after it', () => {
    const thermal = thermalOf(AWG_4);
    expect(timeConstantS(thermal, 0)).toBeCloseTo(74.43 / 0.37859, 1);
    const constant = timeConstantS(thermal, 160) ?? Number.NaN;
    const end = temperatureAfterC(thermal, 160, Number.POSITIVE_INFINITY, AT_50);
    const now = temperatureAfterC(thermal, 160, constant, AT_50);
    expect((now - 50) / (end - 50)).toBeCloseTo(1 - Math.exp(-1), 9);
  });
});

describe('the lump', () => {
  it('of a metric size counts the metal its largest resistance proves: 25 mm² of class 5 has at least 22.5 mm²', () => {
    const cable: Cable = { ...AWG_4, gauge: gaugeId('mm2:25') };
    // 1.02 x 17.241 / 0.780 = 22.546 mm2, times 1.02 x 3.45.
    expect(thermalOf(cable).heatJPerMK).toBeCloseTo(1.02 * 3.45 * 22.546, 2);
    expect(thermalOf({ ...cable, material: 'cca10' }).heatJPerMK).toBeCloseTo(1.02 * 2.5 * 22.546, 2);
  });

  it('stores less in clad wire than in copper, never more than its metals by volume would', () => {
    const heat = (material: (typeof MATERIALS)[number]) => thermalOf({ ...AWG_4, material }).heatJPerMK;
    for (const [material, share] of [
      ['cca10', 0.1],
      ['cca15', 0.15],
    ] as const) {
      expect(heat(material)).toBeLessThanOrEqual(share * heat('copper') + (1 - share) * heat('aluminium'));
      expect(heat(material)).toBeGreaterThanOrEqual(heat('aluminium'));
    }
  });
});

describe('whys', () => {
  it('give the figures again', () => {
    fc.assert(
      fc.property(
        cables,
        multiples,
        surroundings,
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (cable, m, at, s) => {
          const amps = m * tableA(cable);
          const thermal = thermalOf(cable);
          const reached = evaluateWhy(temperatureAfterWhy(cable, amps, s, at));
          expect(reached).toBeCloseTo(temperatureAfterC(thermal, amps, s, at), 6);
          expect(evaluateWhy(thermalWhy(cable))).toBeCloseTo(thermal.heatJPerMK, 9);
          const seconds = secondsToReach(thermal, amps, at.startC + 60, at);
          const why = secondsToReachWhy(cable, amps, at.startC + 60, at);
          if (why === null) expect(seconds).toBe(Number.POSITIVE_INFINITY);
          else expect(evaluateWhy(why) / seconds).toBeCloseTo(1, 7);
        },
      ),
      { seed: 6, numRuns: 100 },
    );
  });

  it('speak of a straight line where heat made and heat shed per kelvin are equal', () => {
    for (const id of ALL_GAUGES) {
      const cable: Cable = { ...AWG_4, gauge: id };
      const { lossWPerMK, heatJPerMK, betaC, ohmPerM20 } = thermalOf(cable);
      // to the last digit for about half of the sizes, a hair beside it for the others
      const level = Math.sqrt((lossWPerMK * (betaC + 20)) / ohmPerM20);
      const perS = (lossWPerMK * (betaC + 50)) / heatJPerMK;
      expect(evaluateWhy(temperatureAfterWhy(cable, level, 10 / perS, AT_50))).toBeCloseTo(60, 6);
      const why = secondsToReachWhy(cable, level, 60, AT_50);
      expect(why === null ? null : evaluateWhy(why) * perS).toBeCloseTo(10, 6);
    }
  });

  it('tell no time to what is there from the start', () => {
    expect(secondsToReachWhy(AWG_4, 1000, 50, AT_50)).toBeNull();
  });

  it('take the time from the fuse that ends the short', () => {
    const time = slowestWhy({ family: 'iso8820-5-SF51', ratingA: 125 }, 300);
    if (time === null) throw new Error('no time');
    const why = temperatureAfterWhy(AWG_4, 450, time, AT_50);
    const seconds = 15 * (300 / 250) ** (Math.log(5 / 15) / Math.log(3.5 / 2));
    expect(evaluateWhy(why)).toBeCloseTo(temperatureAfterC(thermalOf(AWG_4), 450, seconds, AT_50), 9);
  });
});
