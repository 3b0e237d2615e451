import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { remedyOf, sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'grommet-too-small';

/** Feeds of 25 mm2, each in at one side of the wall and out at the other; ISO 6722 thick wall: 10.4 mm outside. */
const feeds = (grommetInsideMm: number | null, count = 1, size = 'mm2:25'): PlanOf => {
  const draft = new PlanOf().battery('battery').fitting('passThrough', 'wall', { grommetInsideMm });
  for (let n = 1; n <= count; n += 1) {
    draft
      .fuse(`f${n}`, 60, { zone: 'bay' })
      .amplifier(`amp${n}`, { ratedW: 300 })
      .fitting('ground', `g${n}`)
      .run('battery.positive', `f${n}.in`, 0.15, { zone: 'bay', size: 'mm2:25' })
      .run(`f${n}.out`, 'wall.through', 1, { size, zone: 'bay' })
      .run('wall.through', `amp${n}.supply`, 2, { size })
      .run(`amp${n}.ground`, `g${n}.body`, 0.5, { size: 'mm2:25' });
  }
  return draft;
};

const lead = (draft: PlanOf, size: string): Plan =>
  draft
    .amplifier('other')
    .run('amp1.remote', 'wall.through', 1, { kind: 'remote', size })
    .run('wall.through', 'other.remote', 1, { kind: 'remote', size })
    .done();

describe('a grommet and the cables in it', () => {
  it('one of 10.4 mm passes 10.4 mm; a narrower one is a note, and a fix where no thin wall saves it', () => {
    expect(severitiesOf(feeds(10.4).done(), RULE)).toEqual([]);
    expect(severitiesOf(feeds(10.3).done(), RULE)).toEqual(['note']);
    // 7.2 mm thin for 8.3 mm thick: 10.4 x 7.2 / 8.3 = 9.022
    expect(severitiesOf(feeds(9.03).done(), RULE)).toEqual(['note']);
    expect(severitiesOf(feeds(9.01).done(), RULE)).toEqual(['fix']);
  });

  it('says nothing where the grommet is not told, or no size is decided', () => {
    expect(severitiesOf(feeds(null).done(), RULE)).toEqual([]);
    const undecided = feeds(2, 1, 'auto').plan;
    const unrated = undecided.fittings.map((fitting) =>
      fitting.kind === 'amplifier' ? { ...fitting, ratedW: null } : fitting,
    );
    expect(severitiesOf({ ...undecided, fittings: unrated }, RULE)).toEqual([]);
  });

  it('two feeds need the sum of both, 20.8 mm; three 2.155 of one, 22.4 mm', () => {
    expect(severitiesOf(feeds(20.8, 2).done(), RULE)).toEqual([]);
    expect(findingsOf(feeds(20.7, 2).done(), RULE)).toMatchObject([
      { severity: 'note', places: [{ id: 'wall' }], params: { cables: 2 } },
    ]);
    expect(findingsOf(feeds(20.7, 2).done(), RULE)[0]?.params.neededMm).toBeCloseTo(20.8, 9);
    expect(severitiesOf(feeds(22.5, 3).done(), RULE)).toEqual([]);
    expect(findingsOf(feeds(22.3, 3).done(), RULE)[0]?.params.neededMm).toBeCloseTo(10.4 * (1 + 2 / Math.sqrt(3)), 9);
  });

  it('counts remote leads, those that carry nothing too: 1.5 mm2 has 2.4 mm, thin wall', () => {
    const [found] = findingsOf(lead(feeds(12.7), 'mm2:1.5'), RULE);
    expect(found?.params).toMatchObject({ cables: 2, insideMm: 12.7 });
    expect(found?.params.neededMm).toBeCloseTo(10.4 + 2.4, 9);
    expect(severitiesOf(lead(feeds(12.8), 'mm2:1.5'), RULE)).toEqual([]);
    // one that is not marked counts as 16 AWG: some 3 mm
    expect(findingsOf(lead(feeds(11), 'auto'), RULE)[0]?.params.neededMm).toBeGreaterThan(10.4 + 2.4);
  });

  it('is said with its figures', () => {
    const plan = feeds(9, 2).done();
    const [found] = findingsOf(plan, RULE);
    if (found === undefined) throw new Error('no finding');
    expect(sentenceOf(found, plan)).toBe(
      'The grommet of wall is 9 mm inside; its 2 cables together need about 20.8 mm.',
    );
    expect(remedyOf(found, plan)).toContain('larger grommet');
  });
});
