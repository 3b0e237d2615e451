import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { remedyOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';

/** Two amplifiers behind one main fuse of 80 A, the smaller one on 12 AWG there and back, with a fuse of its own or without. */
const plan = (ownA: number | null) =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 80, { zone: 'bay' })
    .block('block', [null, ownA])
    .amplifier('large', { ratedW: 600 })
    .amplifier('small', { ratedW: 100 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.1, { zone: 'bay' })
    .run('main.out', 'block.bus', 4)
    .run('block.out1', 'large.supply', 0.3)
    .run('block.out2', 'small.supply', 1, { size: 'sae:12' })
    .run('large.ground', 'g.body', 0.4)
    .run('small.ground', 'g.body', 0.4, { size: 'sae:12', id: 'thin', name: 'Thin ground' })
    .done();

const remedies = (ownA: number | null): string[] =>
  assess(plan(ownA))
    .findings.filter(({ rule, places }) => rule === 'fuse-over-conductor' && places[0]?.id === 'thin')
    .map((one) => remedyOf(one, plan(ownA)));

describe('a ground that its fuse lets too much into', () => {
  // 45 A x sqrt(55 / 75) x sqrt(SAE's area over AWG's) in the cabin: 36 A, and 30 A is the next rating below
  it('asks for a fuse in the feed of its amplifier where it shares one: a smaller main fuse would not last', () => {
    expect(remedies(null)).toEqual(['Put a fuse of at most 30 A into the feed of small, or take a thicker ground.']);
    expect(remedies(30)).toEqual([]);
  });

  it('asks for a smaller fuse where it has its own', () => {
    expect(remedies(50)).toEqual(['Fit a fuse of at most 30 A, or a thicker cable.']);
  });
});
