import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { FittingOf, Plan, Settings } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });
const found = ({ findings }: Assessment, rule: RuleId) => findings.filter((one) => one.rule === rule);

/** One amplifier of 60 A at any voltage behind a fitting of two terminals. */
const behind = (kind: 'relay' | 'switch', patch: Partial<FittingOf<'relay'>> | Partial<FittingOf<'switch'>>): Plan =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 150, { zone: 'bay' })
    .fitting(kind, 'contact', patch as Partial<FittingOf<'switch'>>)
    .amplifier('amp', { ratedW: null, onboardFusesA: [60] })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('main.out', 'contact.in', 2, { size: 'sae:1/0' })
    .run('contact.out', 'amp.supply', 1, { size: 'sae:1/0', id: 'last' })
    .run('amp.ground', 'g.body', 0.4, { size: 'sae:1/0' })
    .done();

describe('what is rated and no fuse', () => {
  it.each(['relay', 'switch'] as const)('a %s of 50 A on the way of 60 A is a fix, one of 60 A is none', (kind) => {
    expect(found(assess(behind(kind, { ratedA: 60 })), 'contact-overloaded')).toEqual([]);
    expect(found(assess(behind(kind, { ratedA: null })), 'contact-overloaded')).toEqual([]);
    const [fix] = found(assess(behind(kind, { ratedA: 50 })), 'contact-overloaded');
    expect(fix).toMatchObject({ severity: 'fix', places: [{ id: 'contact' }], params: { ratedA: 50 } });
    expect(fix?.params.currentA).toBeCloseTo(60, 6);
  });

  it('a bar carries what comes in, not that and what leaves', () => {
    const bar = (ratedA: number) =>
      new PlanOf()
        .battery('battery')
        .fuse('main', 150, { zone: 'bay' })
        .fitting('bus', 'bar', { ratedA })
        .amplifier('one', { ratedW: null, onboardFusesA: [40] })
        .amplifier('two', { ratedW: null, onboardFusesA: [40] })
        .fitting('ground', 'g')
        .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
        .run('main.out', 'bar.bus', 2, { size: 'sae:1/0' })
        .run('bar.bus', 'one.supply', 0.5, { size: 'sae:1/0' })
        .run('bar.bus', 'two.supply', 0.5, { size: 'sae:1/0' })
        .run('one.ground', 'g.body', 0.4, { size: 'sae:1/0' })
        .run('two.ground', 'g.body', 0.4, { size: 'sae:1/0' })
        .done();
    expect(found(assess(bar(80)), 'contact-overloaded')).toEqual([]);
    const [fix] = found(assess(bar(79)), 'contact-overloaded');
    expect(fix?.params.currentA).toBeCloseTo(80, 6);
  });
});

describe('a switch drawn open', () => {
  it('is a note, and the amplifier behind it is told as with the switch closed', () => {
    const [open, closed] = [false, true].map((isClosed) => assess(behind('switch', { closed: isClosed })));
    if (open === undefined || closed === undefined) throw new Error('no answer');
    expect(found(closed, 'switch-open')).toEqual([]);
    expect(found(open, 'switch-open')).toMatchObject([
      { severity: 'note', places: [{ id: 'contact' }, { id: 'amp' }] },
    ]);
    expect(open.amplifiers[0]?.terminalV).toBeCloseTo(closed.amplifiers[0]?.terminalV ?? 0, 6);
    expect(found(open, 'below-cut-out')).toEqual([]);
    // as drawn nothing is drawn from the battery
    expect(open.supply.groups).toMatchObject([{ meanA: 0, minutesOff: null }]);
  });
});

describe('a joint that was measured (RULES 7)', () => {
  // 60 A x sqrt(1/3) = 34.6 A, 1200 A2
  const joint = (toJointOhm: number): Plan => {
    const plan = behind('relay', {});
    return { ...plan, runs: plan.runs.map((run) => (run.id === 'last' ? { ...run, toJointOhm } : run)) };
  };
  it('of 8 mohm takes 9.6 W, of 10 mohm 12 W: a fix', () => {
    expect(found(assess(joint(0.008)), 'joint-heat')).toEqual([]);
    const [fix] = found(assess(joint(0.01)), 'joint-heat');
    expect(fix).toMatchObject({ severity: 'fix', places: [{ id: 'last' }] });
    expect(fix?.params.powerW).toBeCloseTo(12, 6);
  });
});

describe('a take-off (RULES 5 at a factory fuse)', () => {
  const takeOff = (fuseA: number | null, usedA: number): Plan =>
    new PlanOf()
      .fitting('takeOff', 'stud', { zone: 'bay', fuseA, usedA: told(usedA) })
      .fuse('main', 80, { zone: 'bay' })
      .amplifier('amp', { ratedW: null, onboardFusesA: [60] })
      .fitting('ground', 'g')
      .run('stud.stud', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'amp.supply', 2, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.4, { size: 'sae:1/0' })
      .done();
  it('carries 60 A beside 30 A on 100 A; beside 50 A it is a fix', () => {
    expect(found(assess(takeOff(100, 30)), 'takeoff-overloaded')).toEqual([]);
    const [fix] = found(assess(takeOff(100, 50)), 'takeoff-overloaded');
    expect(fix).toMatchObject({ severity: 'fix', places: [{ id: 'stud' }] });
    expect(fix?.params.fullA).toBeCloseTo(110, 6);
  });
  it('carries no more than 0.8 of its rating for long: 50 A + 34.6 A on 105 A', () => {
    // full 110 A on 115 A; for long 84.6 A against 92 A
    expect(found(assess(takeOff(115, 50)), 'takeoff-overloaded')).toEqual([]);
    // full 135 A on 135 A; for long 109.6 A against 108 A
    expect(found(assess(takeOff(135, 75)), 'takeoff-overloaded')).toMatchObject([{ severity: 'fix' }]);
  });
  it('of which no rating is told is a note', () => {
    expect(found(assess(takeOff(null, 0)), 'takeoff-overloaded')).toMatchObject([{ severity: 'note' }]);
  });
});

describe('an isolating relay, open at rest', () => {
  /** The amplifier stands at the front battery; the relay joins a rear one. */
  const two = (kind: 'relay' | 'switch', settings: Partial<Settings> = {}): Plan =>
    new PlanOf(settings)
      .battery('front')
      .battery('rear', { zone: 'cargo', strap: null })
      .fuse('frontFuse', 150, { zone: 'bay' })
      .fuse('rearFuse', 150)
      .fitting(kind, 'join')
      .fitting('bus', 'bar')
      .amplifier('amp', { ratedW: null, onboardFusesA: [60] })
      .fitting('ground', 'g')
      .fitting('ground', 'rearGround')
      .run('front.positive', 'frontFuse.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('frontFuse.out', 'bar.bus', 4, { size: 'sae:1/0', id: 'frontFeed' })
      .run('bar.bus', 'join.in', 0.5, { size: 'sae:1/0' })
      .run('join.out', 'rearFuse.out', 1, { size: 'sae:1/0' })
      .run('rear.positive', 'rearFuse.in', 0.15, { size: 'sae:1/0' })
      .run('rear.negative', 'rearGround.body', 0.4, { size: 'sae:1/0' })
      .run('bar.bus', 'amp.supply', 0.5, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.4, { size: 'sae:1/0' })
      .done();

  it('leaves the front battery to carry all: the drop is that of 60 A along its whole way', () => {
    const [relay, joined] = [assess(two('relay')), assess(two('switch'))];
    const cableV = (answer: Assessment, id: string) => answer.runs.find(({ runId }) => runId === id)?.dropV ?? 0;
    expect(relay.runs.find(({ runId }) => runId === 'frontFeed')?.fullA).toBeCloseTo(60, 6);
    // copper of SAE 1/0, 101,000 circular mils at least, 2 % for the lay, warmed above 50 degC by 34.6 A
    const ohm = (hotC: number) =>
      (4 * 1.02 * 1.7241e-8 * (234.5 + hotC)) / (254.5 * 101_000 * (Math.PI / 4) * 25.4e-6 ** 2);
    expect(cableV(relay, 'frontFeed')).toBeGreaterThan(60 * ohm(50));
    expect(cableV(relay, 'frontFeed')).toBeLessThan(60 * ohm(65));
    const drop = ({ amplifiers }: Assessment) => amplifiers[0]?.dropFeedV ?? 0;
    expect(drop(relay)).toBeGreaterThan(cableV(relay, 'frontFeed'));
    expect(drop(relay)).toBeGreaterThan(1.2 * drop(joined));
  });

  it('parts the batteries for the minutes of play; a closed switch does not', () => {
    const groups = (plan: Plan) => assess(plan).supply.groups.map(({ fittingIds, meanA }) => [fittingIds, meanA]);
    const relay = groups(two('relay'));
    expect(relay.map(([ids]) => ids)).toEqual([['front'], ['rear']]);
    expect(relay[0]?.[1]).toBeCloseTo(60 / 3 + 1, 5);
    expect(relay[1]?.[1]).toBeCloseTo(0, 5);
    expect(groups(two('switch')).map(([ids]) => ids)).toEqual([['front', 'rear']]);
  });

  it('with an amplifier behind it alone is no case of what cannot be carried', () => {
    const answer = assess(behind('relay', {}));
    expect(found(answer, 'cannot-carry')).toEqual([]);
    expect(found(answer, 'below-cut-out')).toEqual([]);
    // it plays while the engine runs, at the posts that charge
    expect(answer.amplifiers[0]?.terminalV).toBeGreaterThan(13.8);
    const both = two('relay');
    const moved = both.runs.map((run) =>
      run.to.fittingId === 'amp' ? { ...run, from: { fittingId: 'join', terminal: 'in' } } : run,
    );
    expect(found(assess({ ...both, runs: moved }), 'cannot-carry')).toEqual([]);
  });
});
