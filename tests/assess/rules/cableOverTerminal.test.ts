import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'cable-over-terminal';

/** A feed of one size through a fuse that takes so much. */
const feed = (takes: string | null, size: string): Plan =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 60, { zone: 'bay', takes })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
    .run('main.out', 'amp.supply', 2, { size })
    .run('amp.ground', 'g.body', 0.5, { size })
    .done();

describe('a cable and the terminal it ends at', () => {
  it('says nothing where nothing is told of the terminal', () => {
    expect(severitiesOf(feed(null, 'sae:4/0'), RULE)).toEqual([]);
  });

  it('one size more is a fix at each terminal; the same is none, and a number is a number', () => {
    expect(severitiesOf(feed('sae:4', 'sae:4'), RULE)).toEqual([]);
    expect(severitiesOf(feed('sae:4', 'sae:8'), RULE)).toEqual([]);
    // full AWG has 12 % more copper than SAE of its number, and is what such a terminal is made for
    expect(severitiesOf(feed('sae:4', 'awg:4'), RULE)).toEqual([]);
    expect(findingsOf(feed('sae:4', 'sae:2'), RULE)).toMatchObject([
      {
        severity: 'fix',
        id: 'cable-over-terminal:main.in',
        places: [{ id: 'main' }, { id: 'battery-main' }],
        params: { gauge: 'sae:2', takes: 'sae:4', cables: 1, areaMm2: null },
      },
      { severity: 'fix', id: 'cable-over-terminal:main.out', places: [{ id: 'main' }, { id: 'main-amp' }] },
    ]);
  });

  it('across the series by area: 70 mm2 where 67.4 mm2 go, not 25 mm2 where 21.15 mm2 do', () => {
    expect(severitiesOf(feed('awg:2/0', 'mm2:70'), RULE)).toEqual([]);
    expect(severitiesOf(feed('awg:4', 'mm2:25'), RULE)).toEqual(['fix', 'fix']);
    expect(severitiesOf(feed('mm2:25', 'awg:4'), RULE)).toEqual([]);
  });
});

describe('a block', () => {
  const block = (takes: string | null, outputsTake: string | null): Plan => {
    const { plan } = new PlanOf()
      .battery('battery')
      .fuse('main', 60, { zone: 'bay' })
      .block('block', [null])
      .amplifier('amp', { ratedW: 300 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2' })
      .run('main.out', 'block.bus', 2, { size: 'sae:2' })
      .run('block.out1', 'amp.supply', 0.5, { size: 'sae:4' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:2' });
    const fittings = plan.fittings.map((one) => (one.kind === 'block' ? { ...one, takes, outputsTake } : one));
    return { ...plan, fittings };
  };

  it('has terminals of two sizes: of its bus, and of its outputs', () => {
    expect(severitiesOf(block('sae:2', 'sae:4'), RULE)).toEqual([]);
    expect(findingsOf(block('sae:4', null), RULE).map(({ params }) => params.terminal)).toEqual(['bus']);
    const plan = block('sae:2', 'sae:8');
    const found = findingsOf(plan, RULE);
    expect(found).toMatchObject([{ params: { terminal: 'out1', gauge: 'sae:4', takes: 'sae:8' } }]);
    if (found[0] !== undefined)
      expect(sentenceOf(found[0], plan)).toBe('Block, output 1 takes SAE 8 at most; block-amp is SAE 4.');
  });
});

describe('several cables at one terminal', () => {
  /** Two feeds in parallel, each fused, from the post to the one supply of an amplifier; both ends take 25 mm2. */
  const two = (size: string): Plan =>
    new PlanOf()
      .battery('battery', { takes: 'mm2:25' })
      .fuse('f1', 40, { zone: 'bay' })
      .fuse('f2', 40, { zone: 'bay' })
      .amplifier('amp', { ratedW: 300, takes: 'mm2:25' })
      .fitting('ground', 'g')
      .run('battery.positive', 'f1.in', 0.15, { zone: 'bay', size })
      .run('battery.positive', 'f2.in', 0.15, { zone: 'bay', size })
      .run('f1.out', 'amp.supply', 2, { size })
      .run('f2.out', 'amp.supply', 2, { size })
      .run('amp.ground', 'g.body', 0.5, { size: 'mm2:25' })
      .done();

  it('lie together in a clamp: two of 16 mm2 have 32 mm2; lugs on a post lie one on the other', () => {
    expect(severitiesOf(two('mm2:10'), RULE)).toEqual([]);
    const found = findingsOf(two('mm2:16'), RULE);
    expect(found).toMatchObject([
      { places: [{ id: 'amp' }, { id: 'f1-amp' }, { id: 'f2-amp' }], params: { areaMm2: 32, cables: 2 } },
    ]);
    if (found[0] !== undefined)
      expect(sentenceOf(found[0], two('mm2:16'))).toBe('Amp takes 25 mm² at most; its 2 cables together have 32 mm².');
  });
});
