import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { sentenceOf } from '../../../src/words/answer.ts';
import table5 from '../../fixtures/published/cfr183425Table5.json' with { type: 'json' };
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf, told } from './findingsOf.ts';

const RULE = 'strap-smaller';

const strapOf = (areaMm2: number, origin: 'told' | 'assumed' = 'told') => ({
  lengthM: told(0.4),
  areaMm2: { value: areaMm2, origin },
});

/** A feed and ground of SAE 1/0, 50.15 mm2, and the vehicle's strap. */
const job = (strap: ReturnType<typeof strapOf> | null, ratedW = 1000): PlanOf =>
  new PlanOf()
    .battery('battery', { strap })
    .fuse('main', 'auto', { zone: 'bay' })
    .amplifier('amp', { ratedW })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('main.out', 'amp.supply', 3, { size: 'sae:1/0' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' });

describe('the strap from the negative post to the body', () => {
  it('smaller than the feed is a note, where its area is told', () => {
    const plan = job(strapOf(25)).done();
    const [found] = findingsOf(plan, RULE);
    expect(found).toMatchObject({
      severity: 'note',
      places: [{ id: 'battery' }, { kind: 'run' }],
      params: { areaMm2: 25, feedGauge: 'sae:1/0', heatingA: null },
    });
    if (found !== undefined)
      expect(sentenceOf(found, plan)).toBe(
        'The factory strap of battery, 25 mm², is smaller than the feed it returns: SAE 1/0.',
      );
    // a twentieth less than 50.154 mm2: 47.77
    expect(severitiesOf(job(strapOf(47.8)).done(), RULE)).toEqual([]);
    expect(severitiesOf(job(strapOf(47.7)).done(), RULE)).toEqual(['note']);
    expect(severitiesOf(job(strapOf(25, 'assumed')).done(), RULE)).toEqual([]);
  });

  it('that carries less than music sends through it is a fix', () => {
    // 4 mm2 between 12 AWG, 3.309 mm2 and 45 A, and 10 AWG, 5.261 mm2 and 60 A, along ln I on ln S; note 1: 0.85 in the bay
    const [a12, a10] = ['12', '10'].map((awg) => table5.rows.find((row) => row.awg === awg)?.amps[4] ?? 0);
    expect([a12, a10]).toEqual([45, 60]);
    const carries = 0.85 * 45 * (4 / 3.309) ** (Math.log(60 / 45) / Math.log(5.261 / 3.309));
    expect(carries).toBeCloseTo(43, 0);
    const [fix] = findingsOf(job(strapOf(4)).done(), RULE);
    // 1,000 W: 103 A to 105 A full, by sqrt(1/3)
    expect(fix).toMatchObject({ severity: 'fix' });
    expect(fix?.params.heatingA).toBeGreaterThan(103 / Math.sqrt(3));
    expect(fix?.params.heatingA).toBeLessThan(107 / Math.sqrt(3));
    expect(fix?.params.strapA).toBeCloseTo(carries, 1);
    // 500 W: some 52 A full, 30 A of heat
    expect(severitiesOf(job(strapOf(4), 500).done(), RULE)).toEqual(['note']);
  });

  it("drawn as a run of the factory's is judged alike, and not where its size is not told", () => {
    const factory = (size: string): Plan =>
      job(null)
        .fitting('ground', 'own')
        .run('battery.negative', 'own.body', 0.4, { kind: 'factory', id: 'strapRun', size })
        .done();
    expect(findingsOf(factory('mm2:16'), RULE)).toMatchObject([
      { severity: 'note', places: [{ kind: 'run', id: 'strapRun' }, {}], params: { areaMm2: 16 } },
    ]);
    expect(severitiesOf(factory('mm2:70'), RULE)).toEqual([]);
    expect(severitiesOf(factory('auto'), RULE)).toEqual([]);
  });

  it('returns what all amplifiers draw: it is held against the feed that they share, not against a branch', () => {
    const plan = new PlanOf()
      .battery('battery', { strap: strapOf(35) })
      .fuse('main', 'auto', { zone: 'bay' })
      .block('block', ['auto', 'auto'])
      .amplifier('one', { ratedW: 400 })
      .amplifier('two', { ratedW: 400 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2/0' })
      .run('main.out', 'block.bus', 3, { size: 'sae:2/0', id: 'shared' })
      .run('block.out1', 'one.supply', 0.5, { size: 'sae:4' })
      .run('block.out2', 'two.supply', 0.5, { size: 'sae:4' })
      .run('one.ground', 'g.body', 0.5, { size: 'sae:4' })
      .run('two.ground', 'g.body', 0.5, { size: 'sae:4' })
      .done();
    expect(findingsOf(plan, RULE)).toMatchObject([{ severity: 'note', params: { feedGauge: 'sae:2/0' } }]);
  });

  it('a ground run straight to the post leaves the strap nothing to carry', () => {
    const plan = job(strapOf(16)).done();
    const runs = plan.runs.map((run) =>
      run.id === 'amp-g' ? { ...run, to: { fittingId: 'battery', terminal: 'negative' } } : run,
    );
    expect(severitiesOf({ ...plan, runs }, RULE)).toEqual([]);
  });
});
