import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import type { Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import { evaluateWhy } from '../../calc/evaluateWhy.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'bend-too-tight';

/** 25 mm2, ISO 6722 thick wall: 10.4 mm outside; 5 of that are 52 mm, 3 are 31.2 mm. */
const feed = (bendRadiusMm: number | null, more: Partial<Plan['runs'][number]> = {}): Plan =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 60, { zone: 'bay' })
    .amplifier('amp', { ratedW: 300 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'mm2:25' })
    .run('main.out', 'amp.supply', 2, { size: 'mm2:25', id: 'feed', bendRadiusMm, ...more })
    .run('amp.ground', 'g.body', 0.5, { size: 'mm2:25' })
    .done();

describe('a bend of which the radius is told', () => {
  it('below 5 diameters is a note (NEC 551.47(H)), below 3 a fix (FAA, at a terminal)', () => {
    expect(severitiesOf(feed(52), RULE)).toEqual([]);
    expect(findingsOf(feed(51.9), RULE)).toMatchObject([
      { severity: 'note', places: [{ id: 'feed' }], source: 'nec551', params: { radiusMm: 51.9 } },
    ]);
    expect(severitiesOf(feed(31.2), RULE)).toEqual(['note']);
    expect(findingsOf(feed(31.1), RULE)).toMatchObject([{ severity: 'fix', source: 'faaBend' }]);
  });

  it('shows how the least radius came about', () => {
    const answer = assess(feed(40));
    const [found] = answer.findings.filter(({ rule }) => rule === RULE);
    const why = answer.whys[found?.why ?? ''];
    if (why === undefined) throw new Error('no why');
    expect(evaluateWhy(why)).toBeCloseTo(52, 9);
    expect(found?.params.leastMm).toBeCloseTo(52, 9);
    if (found !== undefined)
      expect(sentenceOf(found, feed(40))).toBe(
        'Feed is bent to a radius of 40 mm; for cable 10.4 mm thick 52 mm is the least.',
      );
  });
});

it('a corner that is only drawn is no bend', () => {
  const corner = {
    tapedM: null,
    bends: [
      { xM: 2, yM: 0.9 },
      { xM: 2.01, yM: 0.9 },
      { xM: 2, yM: 0.91 },
    ],
  };
  expect(severitiesOf(feed(null, corner), RULE)).toEqual([]);
});
