/** Plans that several tests look at from different sides. */
import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

/** One amplifier, all sizes auto, lengths drawn. */
export const single = (): Plan =>
  new PlanOf()
    .battery('battery', { at: { xM: 0.5, yM: 1.4 } })
    .fuse('main', 'auto', { zone: 'auto', at: { xM: 0.6, yM: 1.3 } })
    .fitting('passThrough', 'wall', { at: { xM: 1, yM: 0.6 } })
    .amplifier('amp', { at: { xM: 3.6, yM: 0.5 } })
    .fitting('ground', 'body', { at: { xM: 3.8, yM: 0.3 } })
    .run('battery.positive', 'main.in', null, { zone: 'auto' })
    .run('main.out', 'wall.through', null, { zone: 'auto', riseM: 0.2, slackPercent: 5 })
    .run('wall.through', 'amp.supply', null, { zone: 'auto', bends: [{ xM: 1.2, yM: 0.2 }] })
    .run('amp.ground', 'body.body', null, { zone: 'auto' })
    .done();

/** Three amplifiers of unlike laws on one block, one output unfused, one ground of old cable. */
export const mixed = (): Plan =>
  new PlanOf()
    .battery('battery', { zone: 'bay' })
    .fuse('main', 'auto', { zone: 'bay' })
    .block('block', ['auto', 'auto', null])
    .amplifier('bass', { ratedW: 800 })
    .amplifier('old', { ratedW: 200, efficiency: 0.55, regulated: false, ampClass: 'AB' })
    .amplifier('byFuses', { ratedW: null, onboardFusesA: [15, 15] })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('battery.positive', 'main.in', 0.2, { zone: 'bay' })
    .run('main.out', 'block.bus', 3.2)
    .run('block.out1', 'bass.supply', 0.7)
    .run('block.out2', 'old.supply', 1.2, { inLoom: true })
    .run('block.out3', 'byFuses.supply', 0.9, { underCarpet: true })
    .run('bass.ground', 'g1.body', 0.5)
    .run('old.ground', 'g1.body', 0.6, { size: 'mm2:16' })
    .run('byFuses.ground', 'g2.body', 0.4, { size: 'awg:4', insulationC: 90 })
    .done();

/** Two batteries and a block between them: a net in which the current has a choice of way. */
export const twoBatteries = (): Plan =>
  new PlanOf()
    .battery('front')
    .fuse('frontFuse', 'auto', { zone: 'bay' })
    .block('block', ['auto', null])
    .battery('rear', { zone: 'cargo', strap: null })
    .fuse('rearFuse', 'auto')
    .amplifier('amp', { ratedW: 900 })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('front.positive', 'frontFuse.in', 0.15, { zone: 'bay' })
    .run('frontFuse.out', 'block.bus', 3)
    .run('rear.positive', 'rearFuse.in', 0.1)
    .run('rearFuse.out', 'block.out2', 0.5)
    .run('block.out1', 'amp.supply', 0.5)
    .run('amp.ground', 'g1.body', 0.5)
    .run('rear.negative', 'g2.body', 0.4)
    .done();

/** Fixed sizes throughout, some of them wrong. */
export const fixed = (): Plan =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 100, { zone: 'bay' })
    .amplifier('amp', { ratedW: 700, onboardFusesA: [30] })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.3, { zone: 'bay', size: 'sae:4' })
    .run('main.out', 'amp.supply', 5, { size: 'mm2:16' })
    .run('amp.ground', 'g.body', 0.5, { size: 'awg:6' })
    .done();

/** One amplifier on a battery that an alternator too small for it feeds. */
export const charged = (): Plan => {
  const plan = single();
  const { fittings } = new PlanOf()
    .fitting('alternator', 'alternator', { ratedA: { value: 60, origin: 'told' } })
    .done();
  return { ...plan, fittings: [...plan.fittings, ...fittings] };
};
