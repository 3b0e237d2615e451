/** A tape tells a length only as long as the run lies as it was measured: what it tells no longer is never taken as sure. */
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { runById } from '../../src/plan/byId.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveBend } from '../../src/plan/edits/moveBend.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { splitRun } from '../../src/plan/edits/splitRun.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

/** Battery, fuse 0.15 m on, amplifier: drawn along y = 0.9 m, and taped as drawn but for the run to the amplifier. */
function feed(tapedM: number | null = 0.15): Plan {
  return new PlanOf()
    .battery('battery', { at: { xM: 1, yM: 0.9 } })
    .fuse('main', 150, { at: { xM: 1.15, yM: 0.9 } })
    .amplifier('amp', { at: { xM: 3.65, yM: 0.9 } })
    .fitting('ground', 'bolt', { at: { xM: 3.95, yM: 0.9 } })
    .run('battery.positive', 'main.in', tapedM, { id: 'head', size: 'sae:1/0' })
    .run('main.out', 'amp.supply', null, { id: 'feed', size: 'sae:1/0' })
    .run('amp.ground', 'bolt.body', 0.3, { id: 'ground', size: 'sae:1/0' })
    .done();
}

const lengthOf = (plan: Plan, id: string) => assess(plan).runs.find(({ runId }) => runId === id)?.length;
const headline = (plan: Plan) => assess(plan).headline.kind;
const notTaped = (plan: Plan) => assess(plan).notTold.find(({ kind }) => kind === 'lengthsNotTaped')?.ids ?? [];

describe('a fuse moved away from where its run was taped', () => {
  const away = moveFitting(feed(), 'main', { xM: 3, yM: 0.9 });

  it('no longer has the length on the tape: what is drawn counts, and is told as not taped', () => {
    expect(lengthOf(feed(), 'head')).toEqual({ lengthM: 0.15, origin: 'taped', plusMinusM: 0 });
    // 3 m - 1 m, and a tenth of it
    expect(lengthOf(away, 'head')).toEqual({ lengthM: 2, origin: 'drawn', plusMinusM: 0.2 });
    expect(notTaped(away)).toContain('head');
    // the limit near a battery is 0.178 m bare
    expect(headline(away)).toBe('stop');
  });

  it('keeps the figure on the tape in the plan', () => {
    expect(runById(away, 'head')).toMatchObject({ tapedM: 0.15, tapedAs: 'outdated' });
  });

  it('counts the tape where that is the greater of the two', () => {
    const long = moveFitting(feed(2.4), 'main', { xM: 1.05, yM: 0.9 });
    expect(lengthOf(long, 'head')).toEqual({ lengthM: 2.4, origin: 'drawn', plusMinusM: 0.24 });
  });

  it('is moved away by many small steps as well as by one', () => {
    let plan = feed();
    for (let step = 1; step <= 20; step += 1) plan = moveFitting(plan, 'main', { xM: 1.15 + 0.05 * step, yM: 0.9 });
    expect(lengthOf(plan, 'head')).toMatchObject({ lengthM: 1.15, origin: 'drawn' });
  });

  it('is measured again by telling the length, the same one too', () => {
    for (const tapedM of [0.15, 1.9]) {
      const again = changeRun(away, 'head', { tapedM });
      expect(lengthOf(again, 'head')).toEqual({ lengthM: tapedM, origin: 'taped', plusMinusM: 0 });
    }
  });
});

it('a rough sketch put right after taping keeps its tape: it is drawn nearer to what was measured', () => {
  const rough = changeRun(moveFitting(feed(null), 'main', { xM: 1.8, yM: 0.9 }), 'head', { tapedM: 0.15 });
  const mended = moveFitting(rough, 'main', { xM: 1.4, yM: 0.9 });
  expect(lengthOf(mended, 'head')).toEqual({ lengthM: 0.15, origin: 'taped', plusMinusM: 0 });
});

it('a bend drawn out lengthens a taped run beyond its tape', () => {
  const bent = changeRun(changeRun(feed(), 'head', { bends: [{ xM: 1.08, yM: 0.9 }] }), 'head', { tapedM: 0.15 });
  const out = moveBend(bent, 'head', 0, { xM: 1.08, yM: 1.9 });
  expect(lengthOf(bent, 'head')).toMatchObject({ origin: 'taped' });
  // there and back, about 1 m each way
  expect(lengthOf(out, 'head')?.lengthM).toBeCloseTo(Math.hypot(0.08, 1) + Math.hypot(0.07, 1), 3);
  expect(lengthOf(out, 'head')?.origin).toBe('drawn');
});

describe('a fuse dropped on a taped run', () => {
  const whole = new PlanOf()
    .battery('battery', { at: { xM: 1, yM: 0.9 } })
    .amplifier('amp', { at: { xM: 4, yM: 0.9 } })
    .fitting('ground', 'bolt', { at: { xM: 4.2, yM: 0.9 } })
    .run('battery.positive', 'amp.supply', 3, { id: 'feed', size: 'sae:1/0' })
    .run('amp.ground', 'bolt.body', 0.3, { id: 'ground', size: 'sae:1/0' })
    .done();
  const fuse = newFitting('fuse', { id: 'main', name: 'Main', sheetId: 'sheet', at: { xM: 1.17, yM: 0.9 } });
  const split = splitRun(whole, 'feed', { xM: 1.17, yM: 0.9 }, fuse, 'rest');

  it('lies where it is drawn: nobody taped the piece up to it', () => {
    expect(lengthOf(split, 'feed')).toEqual({ lengthM: 0.17, origin: 'drawn', plusMinusM: 0.1 });
    expect(lengthOf(split, 'rest')).toMatchObject({ lengthM: 2.83, origin: 'drawn' });
    expect(lengthOf(split, 'rest')?.plusMinusM).toBeCloseTo(0.283, 9);
    // 0.17 m is within 0.178 m, 0.27 m is not: no verdict as calm as that of a tape
    expect(headline(split)).not.toBe('nothing');
  });

  it('taken out again, the whole is as taped', () => {
    expect(removeFitting(split, 'main')).toEqual(whole);
  });

  it('with another one further on, what is joined again is still a share', () => {
    const second = newFitting('passThrough', { id: 'hole', name: 'Hole', sheetId: 'sheet', at: { xM: 2, yM: 0.9 } });
    const three = splitRun(split, 'rest', { xM: 2, yM: 0.9 }, second, 'end');
    const joined = removeFitting(three, 'main');
    expect(runById(joined, 'feed')).toMatchObject({ tapedM: 1, tapedAs: 'share' });
    expect(removeFitting(joined, 'hole')).toEqual(whole);
  });

  it('slid along the cable shares the whole anew; carried off it, the whole is outdated too', () => {
    const along = moveFitting(split, 'main', { xM: 2, yM: 0.9 });
    expect([runById(along, 'feed')?.tapedM, runById(along, 'rest')?.tapedM]).toEqual([1, 2]);
    expect(runById(along, 'feed')?.tapedAs).toBe('share');
    const off = moveFitting(split, 'main', { xM: 2, yM: 1.7 });
    expect(runById(off, 'feed')?.tapedAs).toBe('outdated');
    expect(runById(off, 'rest')?.tapedAs).toBe('outdated');
  });
});
