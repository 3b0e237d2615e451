import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Plan, Settings } from '../../src/plan/schema.ts';
import { sentenceOf } from '../../src/words/answer.ts';
import { PlanOf, told } from './planOf.ts';
import { single } from './plans.ts';

const found = (answer: Assessment, rule: RuleId) => answer.findings.filter((finding) => finding.rule === rule);
const severities = (plan: Plan, rule: RuleId) => found(assess(plan), rule).map(({ severity }) => severity);

type Amp = NonNullable<Parameters<PlanOf['amplifier']>[1]>;

/** A fused feed of 2 m and a ground of 0.5 m, of one size. */
function feed(amp: Amp, size = 'sae:1/0', settings: Partial<Settings> = {}, feedM = 2) {
  return new PlanOf(settings)
    .battery('battery')
    .fuse('main', 'auto', { zone: 'bay' })
    .amplifier('amp', amp)
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
    .run('main.out', 'amp.supply', feedM, { size })
    .run('amp.ground', 'g.body', 0.5, { size });
}

describe('what is told of an amplifier (RULES 2, 5)', () => {
  it('no-rating: without output and fuses nothing is sized, and no current is made up', () => {
    const answer = assess(feed({ ratedW: null, onboardFusesA: null }, 'auto').done());
    expect(found(answer, 'no-rating')).toMatchObject([{ severity: 'fix', places: [{ id: 'amp' }] }]);
    expect(answer.runs.every(({ gauge, fullA }) => gauge === null && fullA === null)).toBe(true);
    expect(answer.fuses[0]?.ratingA).toBeNull();
  });

  it('goes by the sum of the on-board fuses where no output is told: full current and rating', () => {
    const answer = assess(feed({ ratedW: null, onboardFusesA: [30, 30, 25] }, 'auto').done());
    // 85 A at any voltage; the next of SF30 is 100 A; heat: 85 x 0.577 / 0.775 = 63 A
    expect(answer.amplifiers[0]?.fullA).toBe(85);
    expect(answer.fuses[0]).toMatchObject({ ratingA: 100, fullA: 85 });
    expect(answer.figures.mainFuse.governs).toBe('sumOnboard');
  });

  it('ratings-differ: beyond 1.5 times', () => {
    // 500 W at 0.8 and 12.6 V: 49.6 A
    expect(severities(feed({ ratedW: 500, onboardFusesA: [40, 34] }).done(), 'ratings-differ')).toEqual([]);
    expect(severities(feed({ ratedW: 500, onboardFusesA: [40, 35] }).done(), 'ratings-differ')).toEqual(['note']);
    expect(severities(feed({ ratedW: 500, onboardFusesA: [30] }).done(), 'ratings-differ')).toEqual(['note']);
  });

  it('load-unknown and ask-external-fuse: notes', () => {
    const plan = feed({ loadOhm: null, externalFuseMaxA: null, onboardFusesA: [] }).done();
    expect(severities(plan, 'load-unknown')).toEqual(['note']);
    expect(severities(plan, 'ask-external-fuse')).toEqual(['note']);
    expect(assess(plan).notTold).toContainEqual({ kind: 'loadUnknown', ids: ['amp'] });
    expect(severities(feed({ externalFuseMaxA: null, onboardFusesA: [60, 60] }).done(), 'ask-external-fuse')).toEqual(
      [],
    );
  });

  it("fuse-over-maker: the maker's largest external fuse caps the branch", () => {
    const fixedFuse = feed({ ratedW: 300, externalFuseMaxA: 40 });
    fixedFuse.plan = {
      ...fixedFuse.plan,
      fittings: fixedFuse.plan.fittings.map((fitting) =>
        fitting.kind === 'fuse' ? { ...fitting, link: { ratingA: 60, family: 'auto' } } : fitting,
      ),
    };
    expect(found(assess(fixedFuse.done()), 'fuse-over-maker')).toMatchObject([
      { severity: 'fix', places: [{ id: 'main' }, { id: 'amp' }], params: { ratingA: 60, makerMaxA: 40 } },
    ]);
    // left to the answer: 31 A needs 40 A, which the maker allows; 30 A would be the cap at 35 A
    expect(assess(feed({ ratedW: 300, externalFuseMaxA: 40 }).done()).fuses[0]?.ratingA).toBe(40);
    const capped = assess(feed({ ratedW: 300, externalFuseMaxA: 35 }).done());
    expect(capped.fuses[0]?.ratingA).toBe(30);
    // no larger one is allowed there: the cable or the amplifier is what has to change
    expect(found(capped, 'fuse-under-load')).toMatchObject([{ severity: 'stop', params: { fitsA: null } }]);
  });
});

describe('fuses against current (RULES 5)', () => {
  const withFuse = (ratingA: number, duty = 1 / 3) =>
    new PlanOf({ duty: { value: duty, origin: 'told' } })
      .battery('battery')
      .fuse('main', ratingA, { zone: 'bay' })
      .amplifier('amp', { ratedW: null, onboardFusesA: [100] })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'amp.supply', 2, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();

  it('stops above the rating; a heating current above 0.775 of it (holder at 80 degC) is a fix', () => {
    expect(severities(withFuse(80), 'fuse-under-load')).toEqual(['stop']);
    expect(severities(withFuse(100), 'fuse-under-load')).toEqual([]);
    // tones: all of 100 A heats; 125 A bears 96.9 A for long, 150 A 116 A
    expect(severities(withFuse(125, 1), 'fuse-under-load')).toEqual(['fix']);
    expect(severities(withFuse(150, 1), 'fuse-under-load')).toEqual([]);
  });

  it('names the rating that would do in place of one fixed by hand, where the cables allow it', () => {
    // ISO 8820 has 100 and 150 among its ratings; both bear the current, as above, and 1/0 AWG in the bay carries more
    expect(found(assess(withFuse(80)), 'fuse-under-load')).toMatchObject([{ params: { fitsA: 100 } }]);
    expect(found(assess(withFuse(125, 1)), 'fuse-under-load')).toMatchObject([{ params: { fitsA: 150 } }]);
    // 8 AWG carries 64.5 A in the bay: nothing that is needed
    const thin = withFuse(80);
    const runs = thin.runs.map((run) => ({ ...run, conductor: { ...run.conductor, size: 'sae:8' } }));
    expect(found(assess({ ...thin, runs }), 'fuse-under-load')).toMatchObject([{ params: { fitsA: null } }]);
  });
});

describe('drop and voltage (RULES 3)', () => {
  it('drop-cables: sizes fixed by hand that lose more than 3 % of 12 V', () => {
    const answer = assess(feed({ ratedW: 500 }, 'sae:4', {}, 6).done());
    // 4 AWG: 1.02 x 1.7241e-8 / 18.93e-6 = 0.929 mohm per m at 20 degC; 6.65 m at some 55 degC, 54 A: 0.38 V
    const [drop] = found(answer, 'drop-cables');
    expect(drop).toMatchObject({ severity: 'fix', places: [{ id: 'amp' }, {}, {}, {}], params: { limitPercent: 3 } });
    expect(drop?.params.dropV).toBeCloseTo(0.39, 1);
    expect(found(assess(feed({ ratedW: 500 }, 'sae:2', {}, 6).done()), 'drop-cables')).toEqual([]);
  });

  it('sizes the rest to the limit when a cable fixed by hand breaks it by itself', () => {
    const plan = feed({ ratedW: 500 }, 'auto', {}, 3);
    plan.plan = {
      ...plan.plan,
      runs: plan.plan.runs.map((run) =>
        run.id === 'amp-g' ? { ...run, tapedM: 4, conductor: { ...run.conductor, size: 'sae:8' } } : run,
      ),
    };
    const answer = assess(plan.done());
    expect(found(answer, 'drop-cables')).toHaveLength(1);
    expect(found(answer, 'no-size-in-stock')).toEqual([]);
    expect(answer.runs.find(({ runId }) => runId === 'main-amp')?.gauge).not.toBeNull();
  });

  it('drop-whole: note above 5 %, fix above 10 %, and says which assumption decides', () => {
    const body = (ohm: number): Partial<Settings> => ({ bodyOhm: { value: ohm, origin: 'assumed' } });
    const severity = (ohm: number) => found(assess(feed({ ratedW: 800 }, 'sae:4/0', body(ohm)).done()), 'drop-whole');
    expect(severity(0.001)).toEqual([]);
    // 80 A and some: 6 mohm of body are 0.5 V with 0.2 V of joints, link and strap
    expect(severity(0.006)[0]).toMatchObject({ severity: 'note' });
    // doubled it passes 10 %, halved it keeps below 5 %: both flip it
    expect(severity(0.006)[0]?.decidedBy).toEqual(['settings.bodyOhm']);
    expect(severity(0.015)[0]).toMatchObject({ severity: 'fix' });
  });

  it('below-cut-out: with the battery, engine off', () => {
    // 60 CCA: 0.45 x 5.4 / 60 = 40 mohm, at 80 A 3 V
    const weak = (engineAlwaysRunning: boolean) => {
      const draft = feed({ ratedW: 800 }, 'sae:4/0', { engineAlwaysRunning });
      draft.plan = {
        ...draft.plan,
        fittings: draft.plan.fittings.map((fitting) =>
          fitting.kind === 'battery' ? { ...fitting, ccaA: { value: 60, origin: 'told' } } : fitting,
        ),
      };
      return draft.done();
    };
    expect(severities(weak(false), 'below-cut-out')).toEqual(['fix']);
    expect(severities(weak(true), 'below-cut-out')).toEqual([]);
    expect(severities(feed({ ratedW: 800 }, 'sae:4/0').done(), 'below-cut-out')).toEqual([]);
  });

  it('below-cut-out: a note where only an assumed battery keeps it away', () => {
    // 150 CCA: 16 mohm, at 85 A 1.4 V: 10.8 V are left; twice the resistance takes another 1.4 V and more
    const draft = feed({ ratedW: 800 }, 'sae:4/0');
    draft.plan = {
      ...draft.plan,
      fittings: draft.plan.fittings.map((fitting) =>
        fitting.kind === 'battery' ? { ...fitting, ccaA: { value: 150, origin: 'assumed' } } : fitting,
      ),
    };
    const [note] = found(assess(draft.done()), 'below-cut-out');
    expect(note).toMatchObject({ severity: 'note', decidedBy: ['battery.ccaA'], looming: true });
    // the table gives it enough: the note must not say otherwise
    if (note !== undefined)
      expect(sentenceOf(note, draft.done())).toMatch(/^Not as assumed, but with another value for /);
  });

  it('cannot-carry: constant power beyond what the cables let through at any voltage', () => {
    // 60 m of 8 AWG: 0.16 ohm; 12.6^2 / (4 x 0.16) = 248 W at most
    const answer = assess(feed({ ratedW: 400 }, 'sae:8', {}, 60).done());
    expect(found(answer, 'cannot-carry')).toMatchObject([
      { severity: 'fix', places: [{ id: 'amp' }], params: { powerW: 500 } },
    ]);
    expect(answer.amplifiers[0]?.fullA).toBeNull();
  });

  it('cannot-carry: what works of it keeps the amplifier at its cut-out', () => {
    const [refused] = found(assess(feed({ ratedW: 400 }, 'sae:8', {}, 60).done()), 'cannot-carry');
    const percent = Number(refused?.params.workingPercent);
    // 0.16 ohm as above, and 75 mV in the link: (12.6 - 0.075 - 10.5) V x 10.5 V / 0.16 ohm = 133 W of the 500 W drawn
    expect(Math.abs(percent - (100 * (12.6 - 0.075 - 10.5) * 10.5) / 0.16 / 500)).toBeLessThan(1);
    // that much works, a little more does not: 12.6 V less the whole drop is what is left
    const leftV = (share: number) => {
      const amplifier = assess(feed({ ratedW: 400 * share }, 'sae:8', {}, 60).done()).amplifiers[0];
      return 12.6 - Number(amplifier?.dropWholeV);
    };
    expect(leftV(percent / 100)).toBeGreaterThanOrEqual(10.5 - 1e-3);
    expect(leftV(percent / 100 + 0.002)).toBeLessThan(10.5);
    // and far less than the net itself would carry, at half the voltage
    expect(percent).toBeLessThan(0.7 * Number(refused?.params.carriedPercent));
  });

  it('cannot-carry: a lamp that is left dim is no amplifier that shuts down', () => {
    const plain = feed({ ratedW: 400 }, 'sae:8', {}, 60);
    const percentOf = (plan: PlanOf) => Number(found(assess(plan.done()), 'cannot-carry')[0]?.params.workingPercent);
    const alone = percentOf(plain);
    // 4 A through 80 m of 16 AWG of its own, about 1.1 ohm: 4 V are lost to the lamp, and nothing to the amplifier
    const withLamp = feed({ ratedW: 400 }, 'sae:8', {}, 60)
      .fitting('load', 'lamp', { currentA: told(4) })
      .fuse('lampFuse', 5)
      .fitting('ground', 'lampGround')
      .run('battery.positive', 'lampFuse.in', 0.1, { size: 'sae:16' })
      .run('lampFuse.out', 'lamp.supply', 80, { size: 'sae:16' })
      .run('lamp.ground', 'lampGround.body', 0.5, { size: 'sae:16' });
    expect(percentOf(withLamp)).toBeCloseTo(alone, 0);
  });
});

describe('heat (RULES 4)', () => {
  it('ampacity: air as hot as the class leaves none: stop; unmarked cable counts as 60 degC', () => {
    const plan = feed({ ratedW: 300 }, 'auto');
    plan.plan = {
      ...plan.plan,
      runs: plan.plan.runs.map((run) =>
        run.id === 'battery-main'
          ? { ...run, conductor: { ...run.conductor, size: 'sae:4', insulationC: { value: 105, origin: 'assumed' } } }
          : run,
      ),
    };
    const answer = assess(plan.done());
    // 60 degC in a bay of 80 degC
    expect(found(answer, 'ampacity')).toMatchObject([
      { severity: 'stop', places: [{ id: 'battery-main' }], params: { ampacityA: 0 } },
    ]);
    expect(found(answer, 'unmarked-cable')).toMatchObject([{ severity: 'note', places: [{ id: 'battery-main' }] }]);
    expect(answer.notTold).toContainEqual({ kind: 'cableUnmarked', ids: ['battery-main'] });
    expect(found(answer, 'ampacity')[0]?.decidedBy).toEqual([]);
  });

  it('heating: the heating current above the class at the real ambient: stop', () => {
    // 8 AWG, I30 = 80 x sqrt(0.897) = 75.8 A; 108 A full is 62 A of heat: 100 + 75 x 0.67 degC in the air beside hot parts
    const plan = feed({ ratedW: 1000 }, 'sae:8');
    plan.plan = {
      ...plan.plan,
      runs: plan.plan.runs.map((run) => (run.id === 'main-amp' ? { ...run, zone: 'hot' } : run)),
    };
    expect(
      found(assess(plan.done()), 'heating')
        .filter(({ severity }) => severity === 'stop')
        .map(({ places }) => places[0]?.id),
    ).toContain('main-amp');
  });

  it('small-separate-run: below 16 AWG', () => {
    const plan = (size: string) => feed({ ratedW: 20 }, size).done();
    expect(severities(plan('sae:18'), 'small-separate-run')).toHaveLength(3);
    expect(severities(plan('sae:16'), 'small-separate-run')).toEqual([]);
    expect(severities(plan('mm2:1'), 'small-separate-run')).toHaveLength(3);
    expect(severities(plan('mm2:1.5'), 'small-separate-run')).toEqual([]);
  });
});

describe('what is drawn', () => {
  it('source-short: a positive run to the body stops, and no current is made up', () => {
    const answer = assess(feed({}).run('battery.positive', 'g.body', 1, { size: 'sae:4', id: 'wrong' }).done());
    expect(found(answer, 'source-short')).toMatchObject([
      { severity: 'stop', places: [{ id: 'wrong' }, { id: 'battery' }] },
    ]);
    expect(answer.amplifiers[0]?.fullA).toBeNull();
  });

  it('not-fed, ground-missing, loose-end: an amplifier, a fuse and a battery placed and not joined', () => {
    const answer = assess(new PlanOf().battery('battery', { strap: null }).fuse('main').amplifier('amp').done());
    expect(answer.findings.map(({ rule, places, severity }) => `${severity} ${rule} ${places[0]?.id}`)).toEqual([
      'fix ground-missing battery',
      'fix ground-missing amp',
      'fix not-fed amp',
      'note loose-end main',
    ]);
  });

  it('ground-missing: a ground that leads to another battery than the one that feeds', () => {
    const answer = assess(
      new PlanOf()
        .battery('one')
        .battery('other', { strap: null })
        .fuse('main')
        .amplifier('amp')
        .run('one.positive', 'main.in', 0.15, { size: 'sae:2' })
        .run('main.out', 'amp.supply', 2, { size: 'sae:2' })
        .run('amp.ground', 'other.negative', 2, { size: 'sae:2' })
        .done(),
    );
    expect(found(answer, 'ground-missing')).toMatchObject([{ severity: 'fix', places: [{ id: 'amp' }] }]);
    expect(answer.amplifiers[0]?.fullA).toBeNull();
  });

  it('is empty with nothing drawn', () => {
    const answer = assess(new PlanOf().done());
    expect(answer.headline).toEqual({ kind: 'empty', count: 0 });
    expect(answer.findings).toEqual([]);
    expect(Object.values(answer.figures).every(({ value }) => value === null)).toBe(true);
  });

  it('firewall-no-grommet: a fuse on the firewall itself does not lead through it', () => {
    const through = (xM: readonly [number, number, number], kind: 'fuse' | 'passThrough' = 'fuse') => {
      const draft = new PlanOf()
        .battery('battery', { at: { xM: xM[0], yM: 1 } })
        .amplifier('amp', { at: { xM: xM[2], yM: 1 } })
        .fitting(kind, 'wall', { at: { xM: xM[1], yM: 1 } });
      return draft
        .run('battery.positive', kind === 'fuse' ? 'wall.in' : 'wall.through', null)
        .run(kind === 'fuse' ? 'wall.out' : 'wall.through', 'amp.supply', null)
        .done();
    };
    const runs = (plan: Plan) => found(assess(plan), 'firewall-no-grommet').map(({ places }) => places[0]?.id);
    // the firewall of the van is 1 m from its nose
    expect(runs(through([0.5, 1, 3]))).toEqual(['wall-amp']);
    expect(runs(through([3, 1, 0.5]))).toEqual(['battery-wall']);
    expect(runs(through([0.5, 1, 0.7]))).toEqual([]);
    expect(runs(through([2, 1, 3]))).toEqual([]);
    expect(runs(through([0.5, 1, 3], 'passThrough'))).toEqual([]);
  });

  it('firewall-no-grommet: a run across the firewall, unless a pass-through is where it crosses', () => {
    const across = (wallXM: number | null) => {
      const draft = new PlanOf()
        .battery('battery', { at: { xM: 0.5, yM: 1 } })
        .fuse('main', 'auto', { at: { xM: 0.6, yM: 1 } })
        .amplifier('amp', { at: { xM: 3, yM: 1 } });
      draft.run('battery.positive', 'main.in', null);
      if (wallXM === null) return draft.run('main.out', 'amp.supply', null).done();
      return draft
        .fitting('passThrough', 'wall', { at: { xM: wallXM, yM: 1 } })
        .run('main.out', 'wall.through', null)
        .run('wall.through', 'amp.supply', null)
        .done();
    };
    expect(found(assess(across(null)), 'firewall-no-grommet')).toMatchObject([
      { severity: 'fix', places: [{ id: 'main-amp' }] },
    ]);
    expect(severities(across(1), 'firewall-no-grommet')).toEqual([]);
    expect(severities(across(1.1), 'firewall-no-grommet')).toEqual([]);
    expect(found(assess(across(2)), 'firewall-no-grommet')).toMatchObject([{ places: [{ id: 'main-wall' }] }]);
  });
});

describe('lengths (RULES 6)', () => {
  const drawn = (lengthM: number, tapedM: number | null = null) =>
    new PlanOf()
      .battery('battery', { at: { xM: 0.2, yM: 1 } })
      .fuse('main', 'auto', { at: { xM: 0.2 + lengthM, yM: 1 } })
      .amplifier('amp', { ratedW: 300, at: { xM: 0.9, yM: 0.5 } })
      .fitting('ground', 'g', { at: { xM: 0.9, yM: 0.2 } })
      .run('battery.positive', 'main.in', tapedM, { zone: 'bay' })
      .run('main.out', 'amp.supply', 1, { zone: 'bay' })
      .run('amp.ground', 'g.body', 0.3, { zone: 'bay' })
      .done();

  it('a drawn length is uncertain by 100 mm or 10 %: a limit inside the band makes the worse verdict, provisionally', () => {
    // 0.4 m drawn: 0.3 to 0.5 m, and 450 mm lies between
    expect(found(assess(drawn(0.4)), 'unprotected-length')).toMatchObject([
      { severity: 'stop', provisional: true, params: { limitM: 0.45 } },
    ]);
    // 0.3 m: 0.2 to 0.4 m, beyond 178 mm and within 450 mm either way
    expect(found(assess(drawn(0.3)), 'unprotected-length')).toMatchObject([{ severity: 'note', provisional: false }]);
    // 0.1 m: 0 to 0.2 m
    const near = assess(drawn(0.1));
    expect(found(near, 'unprotected-length')).toMatchObject([{ severity: 'note', provisional: true }]);
    expect(near.headline).toEqual({ kind: 'provisional', count: 1 });
  });

  it('a taped length beats the drawn one', () => {
    const answer = assess(drawn(0.4, 0.17));
    expect(answer.runs[0]?.length).toEqual({ lengthM: 0.17, origin: 'taped', plusMinusM: 0 });
    expect(found(answer, 'unprotected-length')).toEqual([]);
    expect(answer.headline.kind).toBe('nothing');
  });

  it('a pass-through dropped onto the unprotected part changes neither length nor uncertainty', () => {
    const plan = drawn(0.3);
    const [first, ...rest] = plan.runs;
    if (first === undefined) throw new Error('no run');
    const wall = {
      id: 'wall',
      name: '',
      sheetId: 'sheet',
      at: { xM: 0.4, yM: 1 },
      zone: 'bay' as const,
      takes: null,
      locked: false,
      kind: 'passThrough' as const,
      grommetInsideMm: null,
    };
    const split: Plan = {
      ...plan,
      fittings: [...plan.fittings, wall],
      runs: [
        { ...first, to: { fittingId: 'wall', terminal: 'through' } },
        { ...first, id: 'second', from: { fittingId: 'wall', terminal: 'through' } },
        ...rest,
      ],
    };
    const [whole, parts] = [assess(plan).sources[0], assess(split).sources[0]];
    expect(parts?.unprotectedM).toBeCloseTo(whole?.unprotectedM ?? 0, 9);
    expect(parts?.plusMinusM).toBeCloseTo(0.1, 9);
  });

  it('adds slack and rise, and shares them out over the zones', () => {
    const answer = assess(single());
    const run = answer.runs.find(({ runId }) => runId === 'main-wall');
    // (0.6, 1.3) to (1, 0.6): 0.8062 m, 5 % slack, 0.2 m rise
    expect(run?.length.lengthM).toBeCloseTo(Math.hypot(0.4, 0.7) * 1.05 + 0.2, 9);
    expect(answer.zones['main-wall']).toBe('bay');
    expect(answer.zones['wall-amp']).toBe('cabin');
    expect(answer.notTold.find(({ kind }) => kind === 'surroundingsNotMarked')?.ids).toHaveLength(4);
  });
});

describe('the boat sets (RULES 6)', () => {
  const at = (ruleSet: Settings['ruleSet'], lengthM: number, sheathed: boolean) => {
    const draft = new PlanOf({ ruleSet })
      .battery('battery')
      .fuse('main')
      .amplifier('amp', { ratedW: 300 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', lengthM, { zone: 'bay', sheathed })
      .run('main.out', 'amp.supply', 1)
      .run('amp.ground', 'g.body', 0.3);
    return severities(draft.done(), 'unprotected-length')[0] ?? null;
  };

  it('33 CFR 183.455: at the source, else within 178 mm, else sheathed within 1016 mm', () => {
    expect([0.17, 0.2].map((lengthM) => at('boatCfr', lengthM, false))).toEqual(['note', 'stop']);
    expect([0.2, 1.016, 1.02].map((lengthM) => at('boatCfr', lengthM, true))).toEqual(['fix', 'fix', 'stop']);
  });

  it('ABYC E-11 as quoted: 178 mm bare, 1830 mm from a battery post when sheathed', () => {
    expect([0.17, 0.2].map((lengthM) => at('boatAbyc', lengthM, false))).toEqual([null, 'stop']);
    expect([0.2, 1.83, 1.84].map((lengthM) => at('boatAbyc', lengthM, true))).toEqual(['note', 'note', 'stop']);
  });

  it('are shown beside the vehicle set: the strictest answer', () => {
    const answer = assess(single());
    expect(answer.ruleSet).toBe('vehicle');
    expect(answer.strictest).toEqual({ ruleSet: 'boatCfr', severity: 'stop', limitM: 0.178 });
  });
});
