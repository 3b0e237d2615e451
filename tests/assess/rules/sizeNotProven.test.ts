import { describe, expect, it } from 'vitest';
import type { Plan, Run } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { ampacity } from '../byHand.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'size-not-proven';

const feed = (ratingA: number, patch: Partial<Run['conductor']>): Plan => {
  const plan = new PlanOf()
    .battery('battery')
    .fuse('main', ratingA, { zone: 'bay' })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
    .run('main.out', 'amp.supply', 2, { size: 'sae:4', id: 'feed' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' })
    .done();
  const runs = plan.runs.map((run) =>
    run.id === 'feed' ? { ...run, conductor: { ...run.conductor, ...patch } } : run,
  );
  return { ...plan, runs };
};

/** 400 x pi / 4 x 0.2^2 = 12.57 mm2: SAE 6 has 12.4 mm2, SAE 4 18.9. */
const THIN = { strands: { count: 400, diameterMm: 0.2 } };
/** 610 x pi / 4 x 0.2^2 = 19.16 mm2. */
const FULL = { strands: { count: 610, diameterMm: 0.2 } };

describe('a cable taken as SAE 4 of which the strands were counted', () => {
  it('that come to SAE 6: a fix behind what that carries, a stop behind more', () => {
    expect((400 * Math.PI * 0.2 ** 2) / 4).toBeCloseTo(12.57, 2);
    const carries = ampacity('6', 'cabin');
    expect(carries).toBeGreaterThan(80);
    expect(carries).toBeLessThan(100);
    expect(findingsOf(feed(80, THIN), RULE)).toMatchObject([
      { severity: 'fix', places: [{ id: 'feed' }], params: { gauge: 'sae:4', proven: 'sae:6', limitA: null } },
    ]);
    const plan = feed(100, THIN);
    const [found] = findingsOf(plan, RULE);
    expect(found).toMatchObject({ severity: 'stop', params: { limitA: 100 } });
    expect(found?.params.ampacityA).toBeCloseTo(carries, 6);
    if (found !== undefined)
      expect(sentenceOf(found, plan)).toMatch(
        /^Feed is taken as SAE 4, but its strands come to 12\.6 mm²: no more than SAE 6\. Its fuse lets 100 A into it/,
      );
  });

  it('that come to it, or were not counted: nothing', () => {
    expect(severitiesOf(feed(100, FULL), RULE)).toEqual([]);
    expect(severitiesOf(feed(100, {}), RULE)).toEqual([]);
    // nothing is fixed that could be less
    expect(severitiesOf(feed(100, { ...THIN, size: 'auto' }), RULE)).toEqual([]);
  });

  it('that are less than any size: a stop behind any fuse', () => {
    const found = findingsOf(feed(30, { strands: { count: 1, diameterMm: 0.3 } }), RULE);
    expect(found).toMatchObject([{ severity: 'stop', params: { proven: null, limitA: 30, ampacityA: null } }]);
  });
});

describe('unmarked cable', () => {
  const unmarked = (patch: Partial<Run['conductor']>): Plan =>
    feed(60, { insulationC: { value: 105, origin: 'assumed' }, ...patch });
  const proven = (plan: Plan) => findingsOf(plan, 'unmarked-cable').map(({ params }) => params.proven);

  it('keeps its note, which says whether its size is proven: strands counted, and copper all through', () => {
    expect(proven(unmarked({}))).toEqual(['no']);
    expect(proven(unmarked(FULL))).toEqual(['no']);
    expect(proven(unmarked({ ...FULL, copperThrough: true }))).toEqual(['yes']);
    expect(proven(unmarked({ ...THIN, copperThrough: true }))).toEqual(['no']);
    expect(proven(unmarked({ ...FULL, copperThrough: true, size: 'sae:2' }))).toEqual(['no']);
  });
});
