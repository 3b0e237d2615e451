import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bandBreaksA,
  clearingBand,
  fastestWhy,
  slowestWhy,
  slowestWithinA,
} from '../../../src/calc/fuse/timeCurrent.ts';
import { SOURCES } from '../../../src/calc/sources.ts';
import { fuseTimes, OPENING_MULTIPLE } from '../../../src/calc/tables/fuseTimes.ts';
import { LINK_FAMILIES } from '../../../src/calc/tables/links.ts';
import printed from '../../fixtures/published/fuseTimes.json' with { type: 'json' };
import { evaluateWhy } from '../evaluateWhy.ts';

const families = [...new Set(printed.rows.map(({ family }) => family))];
const band = (family: string, multiple: number) => {
  const found = clearingBand({ family, ratingA: 100 }, 100 * multiple);
  if (found === null) throw new Error(`no band of ${family}`);
  return found;
};

describe('operating times at the points of ISO 8820', () => {
  it.each(printed.rows)(
    '$family at $percent %: $minS to $maxS s ($trust)',
    ({ family, percent, minS, maxS, trust }) => {
      const point = fuseTimes(family)?.points.find(({ multiple }) => Math.abs(multiple - percent / 100) < 1e-9);
      expect(point).toMatchObject({ minS, maxS });
      expect(SOURCES[point?.source ?? 'feedrunRules'].trust).toBe(trust);
      const { fastestS, slowestS } = band(family, percent / 100);
      expect(slowestS).toBe(maxS);
      // The first point says how long it was tested to carry: there it does not open at all.
      if (percent > 110 && minS !== null) expect(fastestS).toBe(minS);
      if (percent <= 110) expect(fastestS).toBeNull();
    },
  );

  it('has every point listed and no more', () => {
    for (const family of families) {
      const count = printed.rows.filter((row) => row.family === family).length;
      expect(fuseTimes(family)?.points).toHaveLength(count);
    }
  });

  it('holds no band for links that have none published, and invents none', () => {
    for (const { id } of LINK_FAMILIES)
      expect(clearingBand({ family: id, ratingA: 100 }, 500) !== null).toBe(families.includes(id));
    for (const family of [
      'slotted-long',
      'slotted-short',
      'ul248-15-T',
      'post-link',
      'thermal-breaker',
      'own1',
      'constructor',
    ]) {
      expect(clearingBand({ family, ratingA: 100 }, 500)).toBeNull();
      expect(slowestWhy({ family, ratingA: 100 }, 500)).toBeNull();
      expect(fastestWhy({ family, ratingA: 100 }, 500)).toBeNull();
    }
  });
});

describe('between the points', () => {
  it('by hand: type E at 250 %', () => {
    // Slowest: 50 x 1.25^(ln(7/50)/ln(3.5/2)) = 50 x 1.25^-3.5132 = 22.83 s. Fastest: 0.2 x (3.5/2.5)^2 = 0.392 s.
    const { fastestS, slowestS, extrapolated } = band('iso8820-3-E', 2.5);
    expect(slowestS).toBeCloseTo(22.83, 2);
    expect(fastestS).toBeCloseTo(0.392, 9);
    expect(extrapolated).toBe(false);
  });

  it('need not open below 1.35 times its rating, and carries on for good up to 100 or 110 %', () => {
    for (const family of families) {
      expect(band(family, OPENING_MULTIPLE * (1 - 1e-9)).slowestS).toBeNull();
      expect(band(family, OPENING_MULTIPLE).slowestS).not.toBeNull();
      const carries = family === 'iso8820-3-F' || family === 'iso8820-3-C' ? 1.1 : 1;
      expect(band(family, carries).fastestS).toBeNull();
      expect(band(family, 0)).toMatchObject({ fastestS: null, slowestS: null, extrapolated: false });
      expect(band(family, carries * (1 + 1e-9)).fastestS).toBeGreaterThan(0);
    }
  });

  it('beyond the last point holds the slowest and goes on at constant I²t with the fastest, and says so', () => {
    const { fastestS, slowestS, extrapolated } = band('iso8820-3-E', 10);
    expect(slowestS).toBe(1);
    expect(fastestS).toBeCloseTo(0.04 * 0.36, 12);
    expect(extrapolated).toBe(true);
    expect(band('iso8820-3-E', 6).extrapolated).toBe(false);
    // Type C states no fastest time at 600 %.
    expect(band('iso8820-3-C', 5).extrapolated).toBe(true);
    expect(band('iso8820-3-C', 6).fastestS).toBeCloseTo(0.04 * (3.5 / 6) ** 2, 12);
    expect(band('iso8820-3-C', 3.5).extrapolated).toBe(false);
  });

  it('never gets slower as the current rises, keeps fastest below slowest, and never lets more I²t through as fastest', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...families),
        fc.double({ min: 1.36, max: 30, noNaN: true }),
        fc.double({ min: 1.36, max: 30, noNaN: true }),
        (family, one, other) => {
          const [low, high] = [Math.min(one, other), Math.max(one, other)];
          const [slow, quick] = [band(family, low), band(family, high)];
          expect(quick.slowestS).toBeLessThanOrEqual((slow.slowestS ?? 0) * (1 + 1e-12));
          expect(quick.fastestS).toBeLessThanOrEqual((slow.fastestS ?? 0) * (1 + 1e-12));
          expect(slow.fastestS).toBeLessThanOrEqual(slow.slowestS ?? 0);
          expect((quick.fastestS ?? 0) * high ** 2).toBeLessThanOrEqual((slow.fastestS ?? 0) * low ** 2 * (1 + 1e-9));
        },
      ),
      { seed: 11, numRuns: 400 },
    );
  });

  it('keeps every link within its lines that meets the limits at the points, sags between them and lets no more I²t through', () => {
    // A link of its own: t = a / (m^2 - c) + b / m^2 has a vertical asymptote, sags on a log-log chart, and its I2t falls.
    fc.assert(
      fc.property(
        fc.constantFrom(...families),
        fc.double({ min: 1.1, max: 1.8, noNaN: true }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        fc.double({ min: 0.01, max: 6, noNaN: true }),
        fc.double({ min: 1.36, max: 5.9, noNaN: true }),
        (family, c, a, b, m) => {
          const link = (multiple: number) => a / (multiple ** 2 - c) + b / multiple ** 2;
          const times = fuseTimes(family);
          const meets = times?.points.every(
            ({ multiple, minS, maxS }) =>
              multiple < 1.35 ||
              ((minS ?? 0) <= link(multiple) && link(multiple) <= (maxS ?? Number.POSITIVE_INFINITY)),
          );
          fc.pre(meets === true);
          const { fastestS, slowestS, extrapolated } = band(family, m);
          expect(link(m)).toBeLessThanOrEqual((slowestS ?? 0) * (1 + 1e-9));
          if (!extrapolated) expect(link(m)).toBeGreaterThanOrEqual((fastestS ?? 0) * (1 - 1e-9));
        },
      ),
      { seed: 12, numRuns: 300, maxSkipsPerRun: 1000 },
    );
  });
});

describe('sources of a band', () => {
  it('are those of the points on either side', () => {
    expect(band('iso8820-3-E', 2.5).sources).toEqual(['typeETimes']);
    expect(band('iso8820-3-C', 1.7).sources).toEqual(['typeCTimes']);
    expect([...band('iso8820-3-C', 3).sources].sort()).toEqual(['iso8820part3TimesMemory', 'typeCTimes']);
    expect(band('iso8820-3-E', 0).sources).toEqual(['typeETimes']);
  });
});

describe('least current for a time', () => {
  it('is the inverse of the slowest line', () => {
    fc.assert(
      fc.property(fc.constantFrom(...families), fc.double({ min: 0.05, max: 3000, noNaN: true }), (family, seconds) => {
        const amps = slowestWithinA({ family, ratingA: 40 }, seconds);
        const line = fuseTimes(family)?.slowest ?? [];
        if (amps === null) {
          expect(line.every((point) => point.seconds > seconds)).toBe(true);
          return;
        }
        const at = (share: number) =>
          clearingBand({ family, ratingA: 40 }, amps * share)?.slowestS ?? Number.POSITIVE_INFINITY;
        expect(at(1 + 1e-9)).toBeLessThanOrEqual(seconds * (1 + 1e-6));
        expect(at(1 - 1e-9)).toBeGreaterThanOrEqual(seconds * (1 - 1e-6));
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('by hand: type E of 40 A within 50 s from 80 A on; none where no times are published', () => {
    expect(slowestWithinA({ family: 'iso8820-3-E', ratingA: 40 }, 50)).toBeCloseTo(80, 9);
    expect(slowestWithinA({ family: 'slotted-long', ratingA: 40 }, 50)).toBeNull();
  });
});

describe('breaks of a band', () => {
  it('are its points, or the rating and 1.35 times it where none are published', () => {
    expect(bandBreaksA({ family: 'iso8820-3-E', ratingA: 100 })).toEqual([100, 135, 200, 350, 600]);
    expect(bandBreaksA({ family: 'slotted-long', ratingA: 100 })).toEqual([100, 135]);
  });
});

describe('whys', () => {
  it('at a point of the standard show that point alone', () => {
    for (const why of [slowestWhy, fastestWhy]) {
      const steps = why({ family: 'iso8820-3-E', ratingA: 40 }, 80)?.steps ?? [];
      expect(steps.at(-1)?.expression).toBe('t1');
      expect(steps.some(({ symbol }) => symbol === 'm2')).toBe(false);
    }
  });

  it('give both times again, or none where there is none', () => {
    for (const family of families)
      for (const multiple of [0.9, 1.05, 1.2, 1.35, 1.5, 2, 2.5, 3.5, 4, 6, 9]) {
        const of = { family, ratingA: 80 };
        const found = clearingBand(of, 80 * multiple);
        for (const [why, seconds] of [
          [slowestWhy(of, 80 * multiple), found?.slowestS],
          [fastestWhy(of, 80 * multiple), found?.fastestS],
        ] as const) {
          expect(why === null).toBe(seconds === null);
          if (why !== null) expect(evaluateWhy(why)).toBeCloseTo(seconds ?? Number.NaN, 9);
        }
      }
  });
});
