import { describe, expect, it } from 'vitest';
import type { Assessment, ShortAnswer } from '../../src/assess/answer.ts';
import { assess, factsOfPlan } from '../../src/assess/assess.ts';
import { shortAt } from '../../src/assess/short/at.ts';
import { shortCurves } from '../../src/assess/short/curves.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { evaluateWhy } from '../calc/evaluateWhy.ts';
import { heated, ohmPerM, strapOhm } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });

const MOHM = 1e-3;
/** 600 A by SAE J537: 5.4 V / 600 A cold; warm 0.45 of it; cold and aged twice it. */
const WARM = (0.45 * 5.4) / 600;
const AGED = (2 * 5.4) / 600;
const STRAP = strapOhm(0.4);

/** Battery, 0.2 m, fuse, 4 m, amplifier; post 2 and fuse 2 joints ahead of the link, fuse 2 and amplifier 1 behind it. */
const feed = (ratingA: number | null, size: string, { ccaA = 600, feedM = 4, behind = size } = {}): Plan => {
  const plan = new PlanOf().battery('battery', { ccaA: told(ccaA) });
  const fused =
    ratingA === null
      ? plan.run('battery.positive', 'amp.supply', feedM, { size })
      : plan
          .fuse('main', ratingA, { zone: 'bay' })
          .run('battery.positive', 'main.in', 0.2, { size })
          .run('main.out', 'amp.supply', feedM, { size: behind });
  return fused
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g')
    .run('amp.ground', 'g.body', 0.5, { size: behind })
    .done();
};

const shortOf = (answer: Assessment, runId: string): ShortAnswer => {
  const found = answer.shorts.find((one) => one.runId === runId);
  if (found === undefined) throw new Error(`no short on ${runId}`);
  return found;
};
const ofRules = (answer: Assessment) =>
  answer.findings
    .filter(({ rule }) => ['short-not-cleared', 'short-uncertain', 'back-fed'].includes(rule))
    .map(({ rule, severity }) => `${severity} ${rule}`);

describe('a dead short behind a 125 A fuse on 1/0, 600 A battery (RULES 7)', () => {
  const answer = assess(feed(125, 'sae:1/0'));
  const short = shortOf(answer, 'main-amp');
  const ahead = 4 * 0.1 * MOHM + 0.075 / 125 + STRAP;
  const highest = 12.6 / (WARM + ahead + 0.2 * ohmPerM('1/0', 20));
  const lowest = 12.6 / (AGED + ahead + 3 * 0.1 * MOHM + 4.2 * ohmPerM('1/0', 105) + MOHM);

  it('draws most right behind the fuse with a warm battery, least at the far end with a cold, aged one', () => {
    expect(highest).toBeCloseTo(2300, -2);
    expect(short.highestA).toBeCloseTo(highest, 6);
    expect(short.lowestA).toBeCloseTo(lowest, 6);
    expect(short.bySource).toEqual([{ fittingId: 'battery', lowestA: short.lowestA, highestA: short.highestA }]);
    expect(short.fuses).toMatchObject([{ fittingId: 'main', terminal: null }]);
  });

  it('opens in time: at most 1 s, held beyond six times the rating; the conductor far below 160 degC by then', () => {
    expect(short).toMatchObject({ verdict: 'opensInTime', harm: 'none', slowestS: 1, extrapolated: true, limitC: 160 });
    const startC = answer.runs.find(({ runId }) => runId === 'main-amp')?.conductorC ?? 0;
    expect(short.conductorC).toBeCloseTo(heated(highest, 1, '1/0', startC, 50), 2);
    expect(ofRules(answer)).toEqual([]);
  });

  it('finds the worst that the fuse does not see: just below 1.35 x 125 A', () => {
    const settled = heated(1.35 * 125, 1e5, '1/0', 50, 50);
    expect(short.partial?.currentA).toBeCloseTo(168.75, 9);
    expect(short.partial?.settledC).toBeCloseTo(settled, 3);
    expect(short.partial?.faultOhm).toBeCloseTo(12.6 / 168.75 - 12.6 / highest, 9);
    expect(short.partial?.faultW).toBeCloseTo(168.75 ** 2 * (12.6 / 168.75 - 12.6 / highest), 6);
  });

  it('says that nothing opens ahead of the fuse, and leaves that to the unprotected length', () => {
    expect(shortOf(answer, 'battery-main')).toMatchObject({ verdict: 'nothingOpens', unprotected: true, fuses: [] });
  });

  it('gives the why of each figure', () => {
    const figures = [
      [short.whyHighest, short.highestA],
      [short.whyLowest, short.lowestA],
      [short.whySlowest, short.slowestS],
      [short.whyConductor, short.conductorC],
    ] as const;
    for (const [id, value] of figures) {
      const why = answer.whys[id ?? ''];
      if (why === undefined || value === null) throw new Error(`no why ${id}`);
      expect(evaluateWhy(why)).toBeCloseTo(value, 6);
    }
  });
});

describe('verdicts of a dead short', () => {
  it('damaged first: 16 AWG behind 300 A burns before even the fastest link opens; one stop, not two', () => {
    const answer = assess(feed(300, 'sae:1/0', { feedM: 1, behind: 'sae:16' }));
    const short = shortOf(answer, 'main-amp');
    expect(short).toMatchObject({ verdict: 'damagedFirst', harm: 'certain' });
    // at the worst current: it reaches 160 degC well before the least time of the standard
    // the music alone finds no temperature to settle at in 16 AWG: it starts at its class
    expect(heated(short.worstA ?? 0, short.damageS ?? 0, '16', 105, 50)).toBeCloseTo(160, 2);
    expect(short.fastestS ?? 0).toBeGreaterThan(short.damageS ?? Infinity);
    expect(
      answer.findings.filter(({ rule, places }) => rule === 'fuse-over-conductor' && places[0]?.id === 'main-amp'),
    ).toHaveLength(1);
    expect(ofRules(answer)).toEqual([]);
  });

  it('nothing need open at the far end of a weak battery: a note, with the temperature it settles at', () => {
    const answer = assess(feed(100, 'sae:4', { ccaA: 100 }));
    const short = shortOf(answer, 'main-amp');
    const lowest = 12.6 / ((2 * 5.4) / 100 + 7 * 0.1 * MOHM + 0.075 / 100 + STRAP + MOHM + 4.2 * ohmPerM('4', 105));
    expect(lowest).toBeLessThan(1.35 * 100);
    expect(short.lowestA).toBeCloseTo(lowest, 6);
    expect(short.verdict).toBe('nothingOpens');
    expect(short.conductorC).toBeCloseTo(heated(short.worstA ?? 0, 1e5, '4', 50, 50), 2);
    expect(ofRules(answer)).toEqual(['note short-not-cleared']);
  });

  it('no fuse at all: nothing opens, it melts, and no stop beside that for the missing fuse', () => {
    const answer = assess(feed(null, 'sae:4'));
    expect(shortOf(answer, 'battery-amp')).toMatchObject({ verdict: 'nothingOpens', unprotected: true, melts: true });
    expect(ofRules(answer)).toEqual([]);
    expect(answer.findings.some(({ rule }) => rule === 'no-device')).toBe(true);
  });

  it('cannot be told for a family without published limits: a note', () => {
    const plan = feed(125, 'sae:1/0');
    const fittings = plan.fittings.map((one) =>
      one.kind === 'fuse' ? { ...one, link: { ratingA: 125, family: 'ul248-15-T' as const } } : one,
    );
    const answer = assess({ ...plan, fittings });
    expect(shortOf(answer, 'main-amp')).toMatchObject({ verdict: 'cannotBeTold', withoutLimits: true });
    expect(ofRules(answer)).toEqual(['note short-uncertain']);
  });

  it('is quiet where the verdict hangs on a time held beyond the last point of the standard', () => {
    // 6 AWG: 1 s of 2000 A is too much, but no link lets more through than 1 s of 6 x 80 A
    const answer = assess(feed(80, 'sae:6'));
    expect(shortOf(answer, 'main-amp')).toMatchObject({
      verdict: 'cannotBeTold',
      harm: 'possible',
      extrapolated: true,
    });
    expect(heated(6 * 80, 1, '6', 70, 50)).toBeLessThan(160);
    expect(ofRules(answer)).toEqual([]);
  });
});

describe('a short slid along a run', () => {
  const facts = factsOfPlan(feed(125, 'sae:1/0'));

  it('agrees with the assessment at the ends, and draws less through a resistance', () => {
    const [short] = assess(feed(125, 'sae:1/0')).shorts.filter(({ runId }) => runId === 'main-amp');
    const near = shortAt(facts, { runId: 'main-amp', share: 0, faultOhm: 0 });
    const far = shortAt(facts, { runId: 'main-amp', share: 1, faultOhm: 0 });
    expect(near?.highest.stages[0]?.faultA).toBeCloseTo(short?.highestA ?? 0, 6);
    expect(far?.lowest.stages[0]?.faultA).toBeCloseTo(short?.lowestA ?? 0, 6);
    expect(near?.highest).toMatchObject({ verdict: 'opensInTime', clearedS: 1 });
    expect(near?.highest.stages[0]?.fuses).toMatchObject([{ fittingId: 'main', withoutLimits: false }]);
    const through = shortAt(facts, { runId: 'main-amp', share: 0, faultOhm: 0.1 });
    const amps = through?.highest.stages[0]?.faultA ?? 0;
    expect(amps).toBeCloseTo(12.6 / (12.6 / (short?.highestA ?? 1) + 0.1), 6);
    expect(through?.highest.stages[0]?.faultW).toBeCloseTo(0.1 * amps ** 2, 6);
    // 120 A: below 1.35 x 125 A
    expect(through?.highest).toMatchObject({ verdict: 'nothingOpens', clearedS: null });
  });

  it('has curves for the picture: the band of its fuse and the damage of its conductor', () => {
    const curves = shortCurves(facts, 'main-amp');
    expect(curves?.fuses[0]?.curves?.slowest).toContainEqual({ currentA: 250, seconds: 15 });
    expect(curves?.damage.length).toBeGreaterThan(20);
    expect(shortCurves(facts, 'amp-g')).toBeNull();
    expect(shortAt(facts, { runId: 'amp-g', share: 0, faultOhm: 0 })).toBeNull();
  });
});
