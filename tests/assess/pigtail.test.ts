/** What passes for a pigtail (RULES 5): the last short piece before an amplifier, thinner than the cable ahead of it. */
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { ampacity } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const overs = (answer: Assessment) =>
  answer.findings
    .filter(({ rule }) => rule === 'step-down' || rule === 'fuse-over-conductor')
    .map(({ severity, rule, places }) => `${severity} ${rule} ${places[0]?.id}`);

/** main(150) - piece - block with one straight output - branch - amplifier; all else 1/0. */
const plan = (piece: { size: string; lengthM: number; underCarpet?: boolean }, feed = 'sae:1/0', branchM = 4) =>
  new PlanOf()
    .battery('b')
    .fuse('main', 150)
    .block('block', [null])
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g')
    .run('b.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('main.out', 'block.bus', piece.lengthM, { size: piece.size, underCarpet: piece.underCarpet ?? false })
    .run('block.out1', 'amp.supply', branchM, { size: feed })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
    .done();

describe('the short piece between fuse and block', () => {
  it('under carpet, of the size of all the rest, is no step-down: stop', () => {
    // 2 AWG in the cabin 174 A, under carpet 0.65 of it: 113 A, below 150 A
    expect(0.65 * ampacity('2', 'cabin')).toBeCloseTo(113.4, 1);
    const answer = assess(plan({ size: 'sae:2', lengthM: 0.15, underCarpet: true }, 'sae:2'));
    expect(overs(answer)).toEqual(['stop fuse-over-conductor main-block']);
  });

  it('thinner than the cable behind it is no pigtail: stop', () => {
    const answer = assess(plan({ size: 'sae:12', lengthM: 0.15 }));
    expect(overs(answer)).toEqual(['stop fuse-over-conductor main-block']);
  });

  it('stops also where a thicker cable is ahead of it, when no amplifier follows at once', () => {
    const mid = new PlanOf()
      .battery('b')
      .fuse('main', 150)
      .block('one', [null])
      .block('two', [null])
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('b.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'one.bus', 3, { size: 'sae:1/0' })
      .run('one.out1', 'two.bus', 0.1, { size: 'sae:8' })
      .run('two.out1', 'amp.supply', 1, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();
    expect(overs(assess(mid))).toEqual(['stop step-down one-two']);
  });
});

describe('the last piece before an amplifier', () => {
  it('is a pigtail up to 178 mm, behind a thicker cable', () => {
    expect(overs(assess(plan({ size: 'sae:1/0', lengthM: 3 }, 'sae:8', 0.178)))).toEqual(['note step-down block-amp']);
    expect(overs(assess(plan({ size: 'sae:1/0', lengthM: 3 }, 'sae:8', 0.179)))).toEqual(['stop step-down block-amp']);
  });

  it('is none behind a cable as thin as itself, which only lies cooler', () => {
    const answer = assess(plan({ size: 'sae:8', lengthM: 3 }, 'sae:8', 0.1));
    expect(overs(answer)).toEqual(['stop fuse-over-conductor main-block', 'stop fuse-over-conductor block-amp']);
  });

  it('is measured through a pass-through as one cable', () => {
    const through = (firstM: number) =>
      new PlanOf()
        .battery('b')
        .fuse('main', 150)
        .block('block', [null])
        .fitting('passThrough', 'wall')
        .amplifier('amp', { ratedW: 500 })
        .fitting('ground', 'g')
        .run('b.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
        .run('main.out', 'block.bus', 3, { size: 'sae:1/0' })
        .run('block.out1', 'wall.through', firstM, { size: 'sae:8' })
        .run('wall.through', 'amp.supply', 0.1, { size: 'sae:8' })
        .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
        .done();
    expect(overs(assess(through(0.07)))).toEqual(['note step-down block-wall', 'note step-down wall-amp']);
    expect(overs(assess(through(0.1)))).toEqual(['stop step-down block-wall', 'stop step-down wall-amp']);
  });
});
