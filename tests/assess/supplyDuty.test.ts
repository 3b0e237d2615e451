import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { evaluateWhy } from '../calc/evaluateWhy.ts';
import { PlanOf, told } from './planOf.ts';

describe('heating current of loads that play unlike (RULES 2)', () => {
  /** An amplifier of 60 A at the plan's third, one of 30 A that plays tones, lights of 20 A. */
  const unlike = (): Plan =>
    new PlanOf()
      .battery('battery')
      .fuse('main', 200, { zone: 'bay' })
      .block('block', [null, null, null])
      .amplifier('music', { ratedW: null, onboardFusesA: [60] })
      .amplifier('tones', { ratedW: null, onboardFusesA: [30], duty: 1 })
      .fitting('load', 'lights', { currentA: told(20) })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'block.bus', 2, { size: 'sae:1/0' })
      .run('block.out1', 'music.supply', 0.5, { size: 'sae:4' })
      .run('block.out2', 'tones.supply', 0.5, { size: 'sae:4' })
      .run('block.out3', 'lights.supply', 0.5, { size: 'sae:4' })
      .run('music.ground', 'g.body', 0.4, { size: 'sae:4' })
      .run('tones.ground', 'g.body', 0.4, { size: 'sae:4' })
      .run('lights.ground', 'g.body', 0.4, { size: 'sae:4' })
      .done();

  it('is each one’s own in its run, and the sum of them in the feed', () => {
    const answer = assess(unlike());
    const heatingA = (id: string) => answer.runs.find(({ runId }) => runId === id)?.heatingA;
    expect(heatingA('block-music')).toBeCloseTo(60 * Math.sqrt(1 / 3), 6);
    expect(heatingA('block-tones')).toBeCloseTo(30, 6);
    expect(heatingA('lights-g')).toBeCloseTo(20, 6);
    expect(heatingA('main-block')).toBeCloseTo(60 * Math.sqrt(1 / 3) + 30 + 20, 6);
    expect(answer.fuses[0]?.heatingA).toBeCloseTo(60 * Math.sqrt(1 / 3) + 50, 6);
    expect(answer.amplifiers.find(({ fittingId }) => fittingId === 'tones')?.heatingA).toBeCloseTo(30, 6);
  });

  it('is what the derivation of a drop goes by', () => {
    const answer = assess(unlike());
    for (const { dropV, whyDrop } of answer.runs) {
      const why = answer.whys[whyDrop ?? ''];
      if (why === undefined) throw new Error('no why');
      expect(evaluateWhy(why)).toBeCloseTo(dropV ?? -1, 9);
    }
  });
});

describe('an amplifier of two inputs', () => {
  /** Two feeds of 6 mm2, each with a link at its fed end, to the two inputs, which are one inside. */
  const twin = (secondFuse: boolean): Plan => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('main', 300, { zone: 'bay' })
      .fitting('bus', 'bar')
      .fuse('fuseOne', 60)
      .amplifier('amp', { ratedW: null, onboardFusesA: [80], supplyInputs: 'two' })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'mm2:120' })
      .run('main.out', 'bar.bus', 2, { size: 'mm2:120' })
      .run('bar.bus', 'fuseOne.in', 0.1, { size: 'mm2:120' })
      .run('fuseOne.out', 'amp.supply', 0.5, { size: 'mm2:16', id: 'feedOne' })
      .run('amp.ground', 'g.body', 0.4, { size: 'mm2:50', id: 'groundOne' })
      .run('amp.ground2', 'g.body', 0.4, { size: 'mm2:50', id: 'groundTwo' });
    if (!secondFuse) return plan.run('bar.bus', 'amp.supply2', 0.5, { size: 'mm2:16', id: 'feedTwo' }).done();
    return plan
      .fuse('fuseTwo', 60)
      .run('bar.bus', 'fuseTwo.in', 0.1, { size: 'mm2:120' })
      .run('fuseTwo.out', 'amp.supply2', 0.5, { size: 'mm2:16', id: 'feedTwo' })
      .done();
  };

  it('shares its current between two like runs', () => {
    const { runs } = assess(twin(true));
    for (const id of ['feedOne', 'feedTwo', 'groundOne', 'groundTwo'])
      expect(runs.find(({ runId }) => runId === id)?.fullA).toBeCloseTo(40, 4);
  });

  it('counts both fuses against a short on either run, and the main fuse where one has none', () => {
    const limitA = (plan: Plan, id: string) => assess(plan).runs.find(({ runId }) => runId === id)?.limitA;
    // a short on one is fed from its own fuse and, through the amplifier's inputs, from the other's
    expect(limitA(twin(true), 'feedOne')).toBe(60);
    expect(limitA(twin(true), 'feedTwo')).toBe(60);
    expect(limitA(twin(false), 'feedTwo')).toBeGreaterThanOrEqual(300);
  });
});
