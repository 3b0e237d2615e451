import { describe, expect, it } from 'vitest';
import { damageCurve, fuseCurves, temperatureCurve } from '../../../src/calc/fault/curves.ts';
import { damageSeconds, sustainedA } from '../../../src/calc/fault/damage.ts';
import { faultAt } from '../../../src/calc/fault/point.ts';
import { OVERLOAD_ACCEPTED, overloadRatio, overloadWhy, worstUnseen } from '../../../src/calc/fault/unseen.ts';
import { clearingBand } from '../../../src/calc/fuse/timeCurrent.ts';
import { gaugeId } from '../conductor/gaugeId.ts';
import { evaluateWhy } from '../evaluateWhy.ts';
import { AWG_4, faultConductor } from './conductors.ts';

const CONDUCTOR = faultConductor(AWG_4);

describe('the worst partial short that no fuse sees', () => {
  it('by hand: 4 AWG behind 125 A in 50 °C: 168.75 A, settles at 143 °C', () => {
    // q = (168.75 / 160)^2 x 75 / 339.5 = 0.24573; (50 + 234.5 q) / (1 - q) = 107.62 / 0.75427 = 142.69 degC.
    const found = worstUnseen(CONDUCTOR, [{ ratingA: 125, share: 1, baseA: 0 }], 2000);
    expect(found).toMatchObject({ seenBy: 0, runsAway: false, limitC: 155, damageS: Number.POSITIVE_INFINITY });
    expect(found.currentA).toBeCloseTo(168.75, 9);
    expect(found.settledC).toBeCloseTo(142.69, 2);
    expect(found.settlesInS).toBeCloseTo(3 * 260, -1);
  });

  it('is what every fuse carries for good: a hair more and one need open', () => {
    const fuses = [
      { ratingA: 200, share: 1, baseA: 60 },
      { ratingA: 125, share: 0.5, baseA: 0 },
    ];
    const { currentA, seenBy } = worstUnseen(CONDUCTOR, fuses, 5000);
    expect([currentA, seenBy]).toEqual([210, 0]);
    const through = (amps: number) =>
      fuses.map(({ ratingA, share, baseA }) => ({
        family: 'iso8820-5-SF51',
        ratingA,
        currentA: baseA + share * amps,
      }));
    expect(faultAt(CONDUCTOR, currentA, through(currentA * 0.999999)).verdict).toBe('nothingOpens');
    expect(faultAt(CONDUCTOR, currentA, through(currentA * 1.000001)).slowestS).toBeLessThan(1801);
  });

  it('tells a conductor that runs away, a short that cannot draw so much, and one with no fuse', () => {
    const thin = faultConductor({ ...AWG_4, gauge: gaugeId('sae:12') });
    const away = worstUnseen(thin, [{ ratingA: 125, share: 1, baseA: 0 }], 2000);
    expect(away).toMatchObject({ runsAway: true, settledC: 1083, settlesInS: Number.POSITIVE_INFINITY });
    expect(away.damageS).toBeLessThan(60);
    expect(worstUnseen(CONDUCTOR, [{ ratingA: 125, share: 1, baseA: 0 }], 90)).toMatchObject({
      currentA: 90,
      seenBy: null,
    });
    expect(worstUnseen(CONDUCTOR, [], 900)).toMatchObject({ currentA: 900, seenBy: null, runsAway: true });
    expect(worstUnseen(CONDUCTOR, [{ ratingA: 10, share: 1, baseA: 20 }], 900).currentA).toBe(0);
    expect(() => worstUnseen(CONDUCTOR, [{ ratingA: 125, share: 0, baseA: 0 }], 90)).toThrow('no share');
    const alike = { ratingA: 125, share: 1, baseA: 0 };
    expect(worstUnseen(CONDUCTOR, [alike, alike], 2000).seenBy).toBe(0);
  });
});

describe('overload', () => {
  it('is accepted to 1.45 times what the conductor carries, which a fuse not above it always keeps', () => {
    expect(overloadRatio(125, 136)).toBeCloseTo(1.2408, 4);
    expect(evaluateWhy(overloadWhy(125, 136))).toBeCloseTo(1.2408, 4);
    // IEC 60364-4-43 433.1: I2 <= 1.45 Iz
    expect(OVERLOAD_ACCEPTED).toBe(1.45);
    expect(overloadRatio(136, 136)).toBeLessThan(OVERLOAD_ACCEPTED);
    expect(overloadRatio(150, 136)).toBeGreaterThan(OVERLOAD_ACCEPTED);
  });
});

describe('chart lines', () => {
  it('of a fuse run through its points, straight on a log-log chart between any two', () => {
    const of = { family: 'iso8820-3-E', ratingA: 40 };
    const curves = fuseCurves(of, 10, 400);
    expect(curves?.slowest.map(({ currentA, seconds }) => [Math.round(currentA), seconds])).toEqual([
      [54, 1800],
      [80, 50],
      [140, 7],
      [240, 1],
      [400, 1],
    ]);
    for (const side of ['fastest', 'slowest'] as const) {
      const line = curves?.[side] ?? [];
      for (const [index, to] of line.entries()) {
        const from = line[index - 1];
        if (from === undefined || to.currentA / from.currentA < 1.001) continue;
        const currentA = Math.sqrt(from.currentA * to.currentA);
        const drawn = Math.sqrt(from.seconds * to.seconds);
        const band = clearingBand(of, currentA);
        expect((side === 'fastest' ? band?.fastestS : band?.slowestS) ?? 0).toBeCloseTo(drawn, 5);
      }
    }
    expect(fuseCurves({ family: 'slotted-long', ratingA: 100 }, 10, 400)).toBeNull();
    const bends = (fromA: number, toA: number) => fuseCurves(of, fromA, toA)?.slowest.map(({ currentA }) => currentA);
    expect(bends(60, 200)).toEqual([60, 80, 140, 200]);
    expect(bends(80, 240)).toEqual([80, 140, 240]);
  });

  it('of damage start where the conductor stands it for good and fall to the end of the chart', () => {
    const line = damageCurve(CONDUCTOR, 3000);
    expect(line[0]?.currentA).toBeCloseTo(sustainedA(CONDUCTOR) * 1.001, 6);
    expect(line.at(-1)).toEqual({ currentA: 3000, seconds: damageSeconds(CONDUCTOR, 3000) });
    for (const [index, point] of line.entries()) {
      const before = line[index - 1];
      if (before !== undefined) expect(point.seconds).toBeLessThanOrEqual(before.seconds);
    }
    expect(damageCurve(CONDUCTOR, 100)).toEqual([]);
    // Even steps on the logarithmic axis: the middle one is the geometric mean.
    const [first, middle] = [line[0], line[(line.length - 1) / 2]];
    expect(middle?.currentA).toBeCloseTo(Math.sqrt((first?.currentA ?? 0) * 3000), 6);
  });

  it('of damage start at 1 mA in air that is too hot by itself, and are none where it is damaged from the start', () => {
    const inHotAir = faultConductor(AWG_4, 50, 170);
    expect(damageCurve(inHotAir, 100)[0]?.currentA).toBe(1e-3);
    expect(damageCurve(inHotAir, 1e-3)).toEqual([]);
    expect(damageCurve(faultConductor(AWG_4, 170, 50), 3000)).toEqual([]);
  });

  it('of temperature end where the time does', () => {
    const line = temperatureCurve(CONDUCTOR, 1000, 5);
    expect(line[0]?.conductorC).toBeCloseTo(50, 1);
    expect(line[0]?.seconds).toBeCloseTo(1e-3, 12);
    expect(line[(line.length - 1) / 2]?.seconds).toBeCloseTo(Math.sqrt(1e-3 * 5), 9);
    expect(line.at(-1)?.seconds).toBeCloseTo(5, 9);
    expect(line.at(-1)?.conductorC).toBeCloseTo(118.9, 1);
  });
});
