import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { ampacity } from '../byHand.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'parallel-one-fuse';

const base = (): PlanOf =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 100, { zone: 'bay' })
    .amplifier('amp', { ratedW: 600, supplyInputs: 'two' })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' });

/** Two runs from one fuse to one block. */
const pair = (size: string): Plan =>
  base()
    .block('block', [null])
    .run('main.out', 'block.bus', 3, { size, id: 'one' })
    .run('main.out', 'block.bus', 3, { size, id: 'two' })
    .run('block.out1', 'amp.supply', 0.5, { size: 'sae:1/0' })
    .done();

describe('cables side by side behind one fuse', () => {
  it('that carries more than one of them alone: a fix, and each of them is a stop of its own', () => {
    // SAE 8: 64.9 A; the fuse lets 100 A into either
    expect(ampacity('8', 'cabin')).toBeCloseTo(64.9, 1);
    const plan = pair('sae:8');
    const [found] = findingsOf(plan, RULE);
    expect(found).toMatchObject({
      severity: 'fix',
      places: [{ id: 'one' }, { id: 'two' }, { id: 'main' }],
      params: { runs: 2, limitA: 100 },
    });
    expect(found?.params.ampacityA).toBeCloseTo(ampacity('8', 'cabin'), 6);
    expect(severitiesOf(plan, 'step-down').concat(severitiesOf(plan, 'fuse-over-conductor'))).toEqual(['stop', 'stop']);
    if (found !== undefined)
      expect(sentenceOf(found, plan)).toBe(
        'One and two lie side by side behind main, which lets in 100 A; one alone carries 64.9 A.',
      );
  });

  it('of which each carries all that the fuse lets in: a note', () => {
    // SAE 4: 129.6 A
    expect(severitiesOf(pair('sae:4'), RULE)).toEqual(['note']);
    expect(severitiesOf(pair('sae:4'), 'fuse-over-conductor')).toEqual([]);
  });

  it('into the two inputs of one amplifier: none where each output has its fuse', () => {
    const twin = (outputs: readonly (number | null)[]): Plan =>
      base()
        .block('block', outputs)
        .run('main.out', 'block.bus', 3, { size: 'sae:1/0' })
        .run('block.out1', 'amp.supply', 0.5, { size: 'sae:4', id: 'first' })
        .run('block.out2', 'amp.supply2', 0.5, { size: 'sae:4', id: 'second' })
        .done();
    expect(findingsOf(twin([null, null]), RULE)).toMatchObject([
      { severity: 'note', places: [{ id: 'first' }, { id: 'second' }, { id: 'main' }] },
    ]);
    expect(severitiesOf(twin([60, 60]), RULE)).toEqual([]);
    // one fuse in the pair leaves no way round without a device
    expect(severitiesOf(twin([60, null]), RULE)).toEqual([]);
  });

  it('each with a fuse of its own where it is fed: none', () => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('f1', 60, { zone: 'bay' })
      .fuse('f2', 60, { zone: 'bay' })
      .block('block', [null])
      .amplifier('amp', { ratedW: 600 })
      .fitting('ground', 'g')
      .run('battery.positive', 'f1.in', 0.1, { zone: 'bay', size: 'sae:1/0' })
      .run('battery.positive', 'f2.in', 0.1, { zone: 'bay', size: 'sae:1/0' })
      .run('f1.out', 'block.bus', 3, { size: 'sae:1/0' })
      .run('f2.out', 'block.bus', 3, { size: 'sae:1/0' })
      .run('block.out1', 'amp.supply', 0.5, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();
    expect(severitiesOf(plan, RULE)).toEqual([]);
  });

  it('ahead of the first fuse they are the unprotected length’s matter; two grounds are no matter at all', () => {
    const plan = base()
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0', id: 'beside' })
      .run('main.out', 'amp.supply', 3, { size: 'sae:1/0' })
      .run('amp.ground2', 'g.body', 0.5, { size: 'sae:1/0', id: 'secondGround' })
      .done();
    expect(severitiesOf(plan, RULE)).toEqual([]);
  });

  it('through pass-throughs of their own they are two cables all the same', () => {
    const draft = base().block('block', [null]).run('block.out1', 'amp.supply', 0.5, { size: 'sae:1/0' });
    for (const wall of ['w1', 'w2'])
      draft
        .fitting('passThrough', wall)
        .run('main.out', `${wall}.through`, 1, { size: 'sae:4', zone: 'bay' })
        .run(`${wall}.through`, 'block.bus', 2, { size: 'sae:4' });
    expect(findingsOf(draft.done(), RULE)[0]?.places.map(({ id }) => id)).toEqual([
      'main-w1',
      'w1-block',
      'main-w2',
      'w2-block',
      'main',
    ]);
  });

  it('one that only leads round a switch is no pair', () => {
    const plan = base()
      .fitting('switch', 'switch')
      .run('main.out', 'switch.in', 1, { size: 'sae:1/0' })
      .run('switch.in', 'switch.out', 0.2, { size: 'sae:1/0', id: 'round' })
      .run('switch.out', 'amp.supply', 1, { size: 'sae:1/0' })
      .done();
    expect(severitiesOf(plan, RULE)).toEqual([]);
  });
});
