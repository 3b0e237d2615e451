import { describe, expect, it } from 'vitest';
import type { Plan, Run } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { ampacity } from '../byHand.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'clad-as-copper';

/** A feed of SAE 4 in the cabin behind a fuse, scraped or not. */
function feed(ratingA: number, patch: Partial<Run['conductor']>, through = false): Plan {
  const draft = new PlanOf()
    .battery('battery')
    .fuse('main', ratingA, { zone: 'bay' })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' });
  if (through)
    draft
      .fitting('passThrough', 'wall')
      .run('main.out', 'wall.through', 1, { size: 'sae:4', id: 'before', zone: 'bay' })
      .run('wall.through', 'amp.supply', 2, { size: 'sae:4', id: 'feed' });
  else draft.run('main.out', 'amp.supply', 2, { size: 'sae:4', id: 'feed' });
  const plan = draft.done();
  const runs = plan.runs.map((run) =>
    run.id === 'feed' ? { ...run, conductor: { ...run.conductor, ...patch } } : run,
  );
  return { ...plan, runs };
}

const CLAD = { copperThrough: false } as const;

describe('a cable that was scraped and is silver under the red', () => {
  // SAE 4 of 105 degC: 129.6 A in the cabin; clad, 10 %: 0.793 of that
  const carries = 0.793 * ampacity('4', 'cabin');

  it('taken as copper is a fix behind 100 A, which clad wire carries, and a stop behind 125 A, which it does not', () => {
    expect(carries).toBeCloseTo(102.8, 1);
    expect(findingsOf(feed(100, CLAD), RULE)).toMatchObject([
      { severity: 'fix', places: [{ id: 'feed' }], params: { gauge: 'sae:4', limitA: null, ampacityA: null } },
    ]);
    const plan = feed(125, CLAD);
    const [found] = findingsOf(plan, RULE);
    expect(found).toMatchObject({ severity: 'stop', params: { limitA: 125 } });
    expect(found?.params.ampacityA).toBeCloseTo(carries, 6);
    if (found !== undefined)
      expect(sentenceOf(found, plan)).toBe(
        'Feed is taken as copper, but it is not copper all through. Its fuse lets 125 A into it, and it carries 103 A: it burns before that opens.',
      );
  });

  it('is nothing once its metal is entered, where it is copper, or where nobody looked', () => {
    const material = { value: 'cca10', origin: 'told' } as const;
    expect(severitiesOf(feed(100, { ...CLAD, material }), RULE)).toEqual([]);
    expect(severitiesOf(feed(125, { copperThrough: true }), RULE)).toEqual([]);
    expect(severitiesOf(feed(125, { copperThrough: null }), RULE)).toEqual([]);
    // the rules that then know the metal find the fuse too large by themselves
    expect(severitiesOf(feed(125, { ...CLAD, material }), 'fuse-over-conductor')).toEqual(['stop']);
  });

  it('is one cable from end to end: the piece in the bay carries less, 128.7 x 0.793 A', () => {
    const found = findingsOf(feed(125, CLAD, true), RULE);
    expect(found).toMatchObject([{ severity: 'stop', places: [{ id: 'before' }, { id: 'feed' }] }]);
    expect(found[0]?.params.ampacityA).toBeCloseTo(0.793 * ampacity('4', 'bay'), 6);
  });
});
