import { expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf, told } from './findingsOf.ts';

const RULE = 'reducer-length';

/** A reducer at the supply of the amplifier, or at its ground. */
const job = (lengthM: number, at: 'supply' | 'ground' = 'supply'): Plan => {
  const draft = new PlanOf()
    .battery('battery')
    .fuse('main', 60, { zone: 'bay' })
    .fitting('reducer', 'reducer', { lengthM: told(lengthM) })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' });
  if (at === 'supply')
    return draft
      .run('main.out', 'reducer.wide', 3, { size: 'sae:4' })
      .run('reducer.narrow', 'amp.supply', 0.05, { size: 'sae:4' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' })
      .done();
  return draft
    .run('main.out', 'amp.supply', 3, { size: 'sae:4' })
    .run('amp.ground', 'reducer.narrow', 0.05, { size: 'sae:4' })
    .run('reducer.wide', 'g.body', 0.5, { size: 'sae:4' })
    .done();
};

it('is a note up to 178 mm and a fix beyond; in a ground, where no fuse is missed, nothing', () => {
  expect(severitiesOf(job(0.178), RULE)).toEqual(['note']);
  expect(severitiesOf(job(0.179), RULE)).toEqual(['fix']);
  expect(severitiesOf(job(0.3, 'ground'), RULE)).toEqual([]);
  const plan = job(0.3);
  const [fix] = findingsOf(plan, RULE);
  expect(fix?.places).toEqual([{ kind: 'fitting', id: 'reducer' }]);
  if (fix !== undefined)
    expect(sentenceOf(fix, plan)).toBe(
      'The thin end of reducer is 30 cm long, and no fuse is sized for it: 17.8 cm is the most.',
    );
});
