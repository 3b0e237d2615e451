import { describe, expect, it } from 'vitest';
import { excessK } from '../../../src/calc/fault/damage.ts';
import { type FuseCurrent, faultAt } from '../../../src/calc/fault/point.ts';
import { gaugeId } from '../conductor/gaugeId.ts';
import { AWG_4, faultConductor } from './conductors.ts';

const NEVER = Number.POSITIVE_INFINITY;
const SF51 = 'iso8820-5-SF51';
const TYPE_E = 'iso8820-3-E';
const TYPE_C = 'iso8820-3-C';
const CONDUCTOR = faultConductor(AWG_4);
/** In no danger from what is drawn through it here. */
const GREAT = faultConductor({ ...AWG_4, gauge: gaugeId('awg:4/0') });
const fuse = (family: string, ratingA: number, currentA: number): FuseCurrent => ({ family, ratingA, currentA });

describe('a fuse without published times', () => {
  it('carries its rating for good, and above it may open at any moment', () => {
    expect(faultAt(CONDUCTOR, 100, [fuse('slotted-long', 100, 100)]).fastestS).toBe(NEVER);
    expect(faultAt(CONDUCTOR, 50, [fuse('slotted-long', 100, 50)]).fastestS).toBe(NEVER);
    expect(faultAt(CONDUCTOR, 100.1, [fuse('slotted-long', 100, 100.1)]).fastestS).toBe(0);
  });

  it('is not said to open in time, even where no damage threatens', () => {
    expect(faultAt(GREAT, 150, [fuse('slotted-long', 100, 150)])).toMatchObject({
      verdict: 'cannotBeTold',
      harm: 'none',
      damageS: NEVER,
    });
  });

  it('that carries more than its rating is told of, whichever way the current goes', () => {
    const fuses = [fuse(SF51, 200, 300), fuse('slotted-long', 100, -300), fuse('ul248-15-T', 400, 300)];
    expect(faultAt(CONDUCTOR, 300, fuses).withoutBand).toEqual([1]);
  });

  it('that may open the moment the damage is there counts as in time, as any other does', () => {
    // The conductor starts above 160 degC, the limit of PVC: damaged at 0 s.
    const hot = faultConductor(AWG_4, 170, 50);
    expect(faultAt(hot, 300, [fuse('slotted-long', 100, 300)])).toMatchObject({ damageS: 0, harm: 'possible' });
  });
});

describe('fuses in line', () => {
  it('of which one must open are not said to open none', () => {
    const fuses = [fuse(SF51, 125, 1000), fuse(SF51, 500, 600)];
    expect(faultAt(CONDUCTOR, 1000, fuses)).toMatchObject({ verdict: 'opensInTime', clearedBy: 0 });
    expect(faultAt(CONDUCTOR, 1000, [...fuses].reverse())).toMatchObject({ verdict: 'opensInTime', clearedBy: 1 });
  });

  it('that are alike: the first of them is named', () => {
    expect(faultAt(CONDUCTOR, 1000, [fuse(SF51, 125, 1000), fuse(SF51, 125, 1000)]).clearedBy).toBe(0);
  });
});

describe('what the standard does not say', () => {
  it.each([
    ['up to the last point of type E, 600 %, all is stated', [fuse(TYPE_E, 60, 360)], false],
    ['beyond it, not', [fuse(TYPE_E, 60, 361)], true],
    ['the other way as well', [fuse(TYPE_E, 60, -800)], true],
    ['type C states no soonest time beyond 350 %', [fuse(TYPE_C, 40, 141)], true],
    ['up to there it does', [fuse(TYPE_C, 40, 140)], false],
    ['one of several is enough, the first', [fuse(TYPE_E, 60, 800), fuse(SF51, 500, 800)], true],
    ['or the last', [fuse(SF51, 500, 800), fuse(TYPE_E, 60, 800)], true],
    ['no fuse, nothing stated and nothing gone beyond', [], false],
  ] as const)('%s', (_name, fuses, extrapolated) => {
    expect(faultAt(CONDUCTOR, 400, fuses).extrapolated).toBe(extrapolated);
  });
});

describe('how far above its limit a conductor stands', () => {
  it('by hand: 1000 A for 1 s leave 4 AWG at 62.73 degC, 97.27 K below 160; 6 s later counted against 155', () => {
    expect(excessK(CONDUCTOR, 1000, 1)).toBeCloseTo(62.73 - 160, 2);
    expect(excessK(CONDUCTOR, 0, 6)).toBeCloseTo(50 - 155, 9);
  });
});
