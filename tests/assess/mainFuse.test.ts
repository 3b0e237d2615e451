/** The run between a source and its first fuse carries what that fuse lets through (RULES 5), whatever lies behind. */
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { ampacity } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const run = (answer: Assessment, id: string) => answer.runs.find(({ runId }) => runId === id);
const over = (answer: Assessment) =>
  answer.findings
    .filter(({ rule }) => rule === 'fuse-over-conductor')
    .map(({ severity, places, params }) => ({
      severity,
      run: places[0]?.id,
      ratingA: params.ratingA,
      largestA: params.largestA,
    }));

describe('a short just behind the main fuse passes the run before it too', () => {
  it('is judged by the main fuse, not by the smaller branch fuses', () => {
    const plan = new PlanOf()
      .battery('b')
      .fuse('main', 150, { zone: 'bay' })
      .block('block', [30, 30])
      .amplifier('one', { ratedW: 200 })
      .amplifier('two', { ratedW: 200 })
      .fitting('ground', 'g')
      .run('b.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:8' })
      .run('main.out', 'block.bus', 4, { size: 'sae:2' })
      .run('block.out1', 'one.supply', 0.5, { size: 'sae:8' })
      .run('block.out2', 'two.supply', 0.5, { size: 'sae:8' })
      .run('one.ground', 'g.body', 0.5, { size: 'sae:8' })
      .run('two.ground', 'g.body', 0.5, { size: 'sae:8' })
      .done();
    const answer = assess(plan);
    // 8 AWG carries 64.5 A in the bay, 2 AWG 174 A in the cabin; at most 60 A of the 64.5 is a rating held
    expect(ampacity('8', 'bay')).toBeCloseTo(64.5, 0);
    expect(run(answer, 'b-main')?.limitA).toBe(150);
    expect(run(answer, 'main-block')?.limitA).toBe(150);
    expect(run(answer, 'block-one')?.limitA).toBe(30);
    expect(run(answer, 'one-g')?.limitA).toBe(30);
    expect(over(answer)).toEqual([{ severity: 'stop', run: 'b-main', ratingA: 150, largestA: 60 }]);
  });

  it('is judged by the first of two fuses in a row', () => {
    const plan = new PlanOf()
      .battery('b')
      .fuse('f1', 200, { zone: 'bay' })
      .fuse('f2', 40)
      .amplifier('amp', { ratedW: 200 })
      .fitting('ground', 'g')
      .run('b.positive', 'f1.in', 0.15, { zone: 'bay', size: 'sae:8' })
      .run('f1.out', 'f2.in', 2, { size: 'sae:4/0' })
      .run('f2.out', 'amp.supply', 0.5, { size: 'sae:8' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:8' })
      .done();
    const answer = assess(plan);
    expect(run(answer, 'b-f1')?.limitA).toBe(200);
    expect(run(answer, 'f1-f2')?.limitA).toBe(200);
    expect(run(answer, 'f2-amp')?.limitA).toBe(40);
    expect(over(answer)).toMatchObject([{ severity: 'stop', run: 'b-f1', ratingA: 200 }]);
  });

  it('gets no help from a smaller fuse in the return', () => {
    const plan = new PlanOf()
      .battery('b')
      .fuse('m', 125, { zone: 'bay' })
      .fuse('back', 40)
      .amplifier('amp', { ratedW: 200 })
      .fitting('ground', 'g')
      .run('b.positive', 'm.in', 0.15, { zone: 'bay', size: 'sae:8' })
      .run('m.out', 'amp.supply', 2, { size: 'sae:2' })
      .run('amp.ground', 'back.in', 0.2, { size: 'sae:2' })
      .run('back.out', 'g.body', 0.2, { size: 'sae:2' })
      .done();
    const answer = assess(plan);
    expect(run(answer, 'b-m')?.limitA).toBe(125);
    expect(over(answer)).toMatchObject([{ severity: 'stop', run: 'b-m', ratingA: 125 }]);
  });

  it('asks an auto size of the run before the fuse, with a second battery as well', () => {
    const plan = new PlanOf()
      .battery('b')
      .fuse('f1', 150, { zone: 'bay' })
      .block('block', [60, null])
      .battery('rear', { zone: 'cargo', strap: null })
      .fuse('rearFuse', 20)
      .amplifier('amp', { ratedW: 400 })
      .fitting('ground', 'g')
      .run('b.positive', 'f1.in', 0.15, { zone: 'bay' })
      .run('f1.out', 'block.bus', 3)
      .run('block.out1', 'amp.supply', 0.5)
      .run('block.out2', 'rearFuse.in', 0.5)
      .run('rear.positive', 'rearFuse.out', 0.1)
      .run('rear.negative', 'g.body', 0.5)
      .run('amp.ground', 'g.body', 0.5)
      .done();
    const answer = assess(plan);
    expect(run(answer, 'b-f1')?.limitA).toBe(150);
    // 150 A in the bay: 2 AWG carries 173 A, 4 AWG 128.7 A
    expect(run(answer, 'b-f1')?.ampacityA).toBeGreaterThanOrEqual(150);
    expect(over(answer)).toEqual([]);
  });

  it('is judged by its own fuse where another feed with a larger one starts at the same post', () => {
    const plan = (size: string) =>
      new PlanOf()
        .battery('b')
        .fuse('small', 100, { zone: 'bay' })
        .fuse('large', 175, { zone: 'bay' })
        .amplifier('one', { ratedW: 800 })
        .amplifier('two', { ratedW: 1500 })
        .fitting('ground', 'g')
        .run('b.positive', 'small.in', 0.15, { zone: 'bay', size })
        .run('small.out', 'one.supply', 3, { zone: 'bay', size: 'sae:2' })
        .run('b.positive', 'large.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
        .run('large.out', 'two.supply', 3, { zone: 'bay', size: 'sae:1/0' })
        .run('one.ground', 'g.body', 0.5, { size: 'sae:2' })
        .run('two.ground', 'g.body', 0.5, { size: 'sae:1/0' })
        .done();
    const allowed = Object.fromEntries(
      assess(plan('sae:2')).fuses.map(({ fittingId, ceilingA }) => [fittingId, ceilingA]),
    );
    expect(allowed.small).toBeCloseTo(ampacity('2', 'bay'), 6);
    expect(allowed.large).toBeCloseTo(ampacity('1/0', 'bay'), 6);
    const [thin] = assess(plan('sae:8')).findings.filter(({ rule }) => rule === 'fuse-over-conductor');
    expect(thin?.places.map(({ id }) => id)).toEqual(['b-small', 'small']);
  });
});
