/** A pass-through lets one cable through and joins nothing else (RULES 4). */
import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { PlanOf } from './planOf.ts';

const found = (answer: Assessment, rule: RuleId) =>
  answer.findings
    .filter((finding) => finding.rule === rule)
    .map(({ severity, places }) => [severity, ...places.map(({ id }) => id)]);

/** Two fused feeds, through one pass-through or through two. */
const feeds = (second: 'p1' | 'p2') => {
  const draft = new PlanOf().battery('b').fitting('passThrough', 'p1').fitting('passThrough', 'p2');
  for (const [n, wall] of [
    [1, 'p1'],
    [2, second],
  ] as const) {
    draft
      .fuse(`f${n}`, 60, { zone: 'bay' })
      .amplifier(`a${n}`, { ratedW: 400 })
      .fitting('ground', `g${n}`)
      .run('b.positive', `f${n}.in`, 0.15, { zone: 'bay', size: 'sae:4' })
      .run(`f${n}.out`, `${wall}.through`, 1, { size: 'sae:4', id: `before${n}` })
      .run(`${wall}.through`, `a${n}.supply`, 2, { size: 'sae:4', id: `after${n}` })
      .run(`a${n}.ground`, `g${n}.body`, 0.5, { size: 'sae:4' });
  }
  return draft.done();
};

describe('pass-through-shared', () => {
  it('finds two feeds in one pass-through, and nothing when each has its own', () => {
    expect(found(assess(feeds('p1')), 'pass-through-shared')).toEqual([
      ['fix', 'p1', 'before1', 'after1', 'before2', 'after2'],
    ]);
    expect(found(assess(feeds('p2')), 'pass-through-shared')).toEqual([]);
  });

  it('finds a feed that divides there', () => {
    const plan = new PlanOf()
      .battery('b')
      .fuse('f', 60)
      .fitting('passThrough', 'p')
      .amplifier('one', { ratedW: 200 })
      .amplifier('two', { ratedW: 200 })
      .run('b.positive', 'f.in', 0.1)
      .run('f.out', 'p.through', 1)
      .run('p.through', 'one.supply', 1)
      .run('p.through', 'two.supply', 1)
      .done();
    expect(found(assess(plan), 'pass-through-shared')).toEqual([['fix', 'p', 'f-p', 'p-one', 'p-two']]);
  });

  it('leaves remote leads alone: in pairs beside a feed, or among themselves', () => {
    const lead = { kind: 'remote' } as const;
    const plan = new PlanOf()
      .battery('b')
      .fuse('f', 60)
      .fitting('passThrough', 'p')
      .amplifier('one', { ratedW: 200 })
      .amplifier('two', { ratedW: 200 })
      .run('b.positive', 'f.in', 0.1)
      .run('f.out', 'p.through', 1)
      .run('p.through', 'one.supply', 1)
      .run('one.remote', 'p.through', 1, lead)
      .run('p.through', 'two.remote', 1, lead)
      .done();
    expect(found(assess(plan), 'pass-through-shared')).toEqual([]);
  });
});

describe('cable-changes', () => {
  const plan = (before: object, after: object) =>
    new PlanOf()
      .battery('b')
      .fuse('f', 60, { zone: 'bay' })
      .fitting('passThrough', 'p')
      .amplifier('amp', { ratedW: 400 })
      .fitting('ground', 'g')
      .run('b.positive', 'f.in', 0.15, { zone: 'bay' })
      .run('f.out', 'p.through', 1, before)
      .run('p.through', 'amp.supply', 2, after)
      .run('amp.ground', 'g.body', 0.5)
      .done();
  const changes = (before: object, after: object) =>
    assess(plan(before, after)).findings.flatMap(({ rule, severity, params }) =>
      rule === 'cable-changes' ? [[severity, params.changes]] : [],
    );
  const conductor = (size: string, value: 'copper' | 'aluminium', origin: 'told' | 'assumed', insulationC = 105) => ({
    conductor: {
      size,
      material: { value, origin: 'told' },
      insulationC: { value: insulationC, origin },
      strands: null,
      copperThrough: null,
    },
  });

  it('finds pieces fixed to unlike sizes, metals or classes', () => {
    expect(changes({ size: 'sae:4' }, { size: 'sae:2' })).toEqual([['fix', ['size']]]);
    expect(changes({ size: 'sae:4', insulationC: 105 }, { size: 'sae:4', insulationC: 60 })).toEqual([
      ['fix', ['class']],
    ]);
    expect(changes(conductor('sae:4', 'copper', 'told'), conductor('sae:2', 'aluminium', 'told', 90))).toEqual([
      ['fix', ['size', 'material', 'class']],
    ]);
  });

  it('finds nothing where they are alike, where one follows the other, or where a class is merely not told', () => {
    expect(changes({ size: 'sae:4' }, { size: 'sae:4' })).toEqual([]);
    expect(changes({ size: 'auto' }, { size: 'sae:2', insulationC: 60 })).toEqual([]);
    expect(changes({}, {})).toEqual([]);
    expect(changes(conductor('sae:4', 'copper', 'told'), conductor('sae:4', 'copper', 'assumed', 60))).toEqual([]);
  });
});
