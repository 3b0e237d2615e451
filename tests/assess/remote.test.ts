/** A remote lead that a battery reaches is a cable like any other: it can be bare of a fuse, short, and burn. */
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

const stops = (answer: Assessment) =>
  answer.findings
    .filter(({ severity }) => severity === 'stop')
    .map(({ rule, places }) => [rule, ...places.map(({ id }) => id)]);

/** A job that nothing is wrong with, by itself. */
const job = () =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 60, { zone: 'bay' })
    .amplifier('amp', { ratedW: 400 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
    .run('main.out', 'amp.supply', 3, { size: 'sae:4' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' });

describe('a remote lead', () => {
  it('between two amplifiers carries nothing, and no battery reaches it', () => {
    const alone = assess(job().amplifier('other').done());
    const joined = assess(
      job().amplifier('other').run('amp.remote', 'other.remote', 1, { kind: 'remote', id: 'lead' }).done(),
    );
    expect(joined.findings).toEqual(alone.findings);
    expect(joined.runs.find(({ runId }) => runId === 'lead')).toMatchObject({ gauge: null, limitA: null });
    expect(stops(joined)).toEqual([]);
  });

  it('straight from the battery has no fuse: stop', () => {
    const plan = job().run('battery.positive', 'amp.remote', 3, { kind: 'remote', id: 'lead' }).done();
    expect(stops(assess(plan))).toEqual([['no-device', 'lead', 'battery', 'amp']]);
    expect(assess(plan).sources[0]?.endsAt).toEqual({ fittingId: 'amp', terminal: 'remote' });
  });

  it('from one amplifier to the next is live when the first one is fed by it', () => {
    const plan = job()
      .amplifier('other')
      .run('battery.positive', 'amp.remote', 3, { kind: 'remote', id: 'lead' })
      .run('amp.remote', 'other.remote', 1, { kind: 'remote', id: 'next' })
      .done();
    expect(assess(plan).sources[0]?.totalUnprotectedM).toBeCloseTo(4.15, 9);
  });

  it('from the battery to the body is a dead short, also through a fitting', () => {
    const straight = job().run('battery.positive', 'g.body', 1, { kind: 'remote', id: 'lead' }).done();
    expect(stops(assess(straight)).map(([rule]) => rule)).toEqual(['source-short']);
    const through = job()
      .fitting('passThrough', 'wall')
      .run('battery.positive', 'wall.through', 1, { kind: 'remote', id: 'lead' })
      .run('wall.through', 'g.body', 1, { kind: 'remote', id: 'on' })
      .done();
    expect(stops(assess(through)).some(([rule]) => rule === 'source-short')).toBe(true);
  });

  it('behind a fuse is judged by its size; left to us it counts as 16 AWG', () => {
    const behind = (ratingA: number, size: string) =>
      job()
        .fuse('small', ratingA)
        .run('battery.positive', 'small.in', 0.15, { zone: 'bay', size: 'sae:4' })
        .run('small.out', 'amp.remote', 3, { kind: 'remote', id: 'lead', size })
        .done();
    // a blade link so near a battery may not break a short there: that is the breaking capacity's matter
    const bySize = (plan: Plan) => stops(assess(plan)).filter(([rule]) => rule !== 'breaking-capacity');
    // 16 AWG of 105 degC: 25 A at 30 degC, so 25 x sqrt(0.9) x 0.856, about 20 A
    expect(bySize(behind(5, 'auto'))).toEqual([]);
    expect(bySize(behind(5, 'sae:18'))).toEqual([]);
    expect(bySize(behind(30, 'auto'))).toEqual([['fuse-over-conductor', 'lead', 'small']]);
    expect(bySize(behind(30, 'sae:8'))).toEqual([]);
    const rules = assess(behind(5, 'auto')).findings.map(({ rule }) => rule);
    expect(rules.filter((rule) => rule !== 'breaking-capacity')).toEqual([]);
  });

  it('shares a pass-through with the feed without touching it', () => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('main', 60, { zone: 'bay' })
      .fitting('passThrough', 'wall')
      .amplifier('amp', { ratedW: 400 })
      .amplifier('other')
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
      .run('main.out', 'wall.through', 1, { size: 'sae:4' })
      .run('wall.through', 'amp.supply', 2, { size: 'sae:4' })
      .run('amp.remote', 'wall.through', 1, { kind: 'remote' })
      .run('wall.through', 'other.remote', 1, { kind: 'remote' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' })
      .done();
    const answer = assess(plan);
    expect(stops(answer)).toEqual([]);
    expect(answer.runs.find(({ runId }) => runId === 'amp-wall')?.limitA).toBeNull();
  });

  it('takes on the current of a power run that ends where two leads start', () => {
    const plan = job()
      .amplifier('other')
      .fitting('passThrough', 'wall')
      .run('battery.positive', 'wall.through', 0.1, { id: 'tap' })
      .run('wall.through', 'amp.remote', 2, { kind: 'remote', id: 'lead' })
      .run('wall.through', 'other.remote', 3, { kind: 'remote', id: 'next' })
      .done();
    expect(stops(assess(plan))).toEqual([['no-device', 'tap', 'next', 'battery', 'other']]);
    expect(assess(plan).findings.map(({ rule }) => rule)).toContain('pass-through-shared');
  });

  it('is a ground when it is drawn as one', () => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('main', 60, { zone: 'bay' })
      .amplifier('amp', { ratedW: 400 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
      .run('main.out', 'amp.supply', 3, { size: 'sae:4' })
      .run('amp.ground', 'g.body', 0.5, { kind: 'remote', size: 'sae:18' })
      .done();
    expect(stops(assess(plan))).toContainEqual(['fuse-over-conductor', 'amp-g', 'main']);
  });
});
