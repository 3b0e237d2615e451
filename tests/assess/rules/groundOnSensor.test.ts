import { expect, it } from 'vitest';
import type { FittingOf, Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'ground-on-sensor';

const job = (battery: Partial<FittingOf<'battery'>>, to = 'battery.negative'): Plan =>
  new PlanOf()
    .battery('battery', battery)
    .fuse('main', 60, { zone: 'bay' })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2' })
    .run('main.out', 'amp.supply', 3, { size: 'sae:2' })
    .run('amp.ground', to, 3, { size: 'sae:2', id: 'back' })
    .done();

it('a ground on a post that carries the sensor is a fix; on one that carries none, nothing', () => {
  const plan = job({ sensedNegative: true });
  const [found] = findingsOf(plan, RULE);
  expect(found).toMatchObject({ severity: 'fix', places: [{ id: 'battery' }, { id: 'back' }] });
  if (found !== undefined)
    expect(sentenceOf(found, plan)).toBe(
      "The negative post of battery carries the vehicle's battery sensor, and back goes onto the post: what flows there is never counted.",
    );
  expect(severitiesOf(job({ sensedNegative: false }), RULE)).toEqual([]);
});

it('a ground to the body is where it belongs, sensor or not', () => {
  expect(severitiesOf(job({ sensedNegative: true }, 'g.body'), RULE)).toEqual([]);
});

it('not told: the vehicle’s own battery, which has a factory strap, is worth a look; another one is not', () => {
  expect(severitiesOf(job({ sensedNegative: null }), RULE)).toEqual(['note']);
  expect(severitiesOf(job({ sensedNegative: null, strap: null }), RULE)).toEqual([]);
  expect(severitiesOf(job({ sensedNegative: null }, 'g.body'), RULE)).toEqual([]);
});

it("the factory's own cable on the post is none of ours", () => {
  const plan = job({ sensedNegative: true, strap: null }, 'g.body');
  const own = new PlanOf().run('battery.negative', 'g.body', 0.4, { kind: 'factory', id: 'own' }).plan.runs;
  expect(severitiesOf({ ...plan, runs: [...plan.runs, ...own] }, RULE)).toEqual([]);
});
