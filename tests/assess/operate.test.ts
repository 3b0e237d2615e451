import { describe, expect, it } from 'vitest';
import { chooseSizes } from '../../src/assess/choose/choose.ts';
import { buildModel } from '../../src/assess/model.ts';
import { operate } from '../../src/assess/operate.ts';
import { mixed, single } from './plans.ts';

describe.each(Object.entries({ single, mixed }))('the operating point of %s', (_, plan) => {
  it('is the same along the ways and by the network solver', () => {
    const model = buildModel(plan());
    const { trialSizes } = chooseSizes(model);
    expect(model.ways.radial).toBe(true);
    const byWays = operate(model, trialSizes);
    const byNetwork = operate({ ...model, ways: { ...model.ways, radial: false } }, trialSizes);
    if (!byWays.ok || !byNetwork.ok) throw new Error('the loads are carried');
    expect(byNetwork.ratings).toEqual(byWays.ratings);
    for (const [edge, amps] of byWays.fullA.entries()) expect(byNetwork.fullA[edge]).toBeCloseTo(amps, 6);
    for (const [index, { loadVolts }] of byWays.states.entries()) {
      for (const [load, volts] of loadVolts.entries())
        expect(byNetwork.states[index]?.loadVolts[load]).toBeCloseTo(volts, 7);
    }
  });

  it('keeps power: what the loads draw is what they are told to', () => {
    const model = buildModel(plan());
    const worked = operate(model, chooseSizes(model).trialSizes);
    if (!worked.ok) throw new Error('the loads are carried');
    for (const { loadAmps, loadVolts } of worked.states) {
      for (const [load, demand] of model.demands.entries()) {
        if (demand?.law === 'power')
          expect((loadAmps[load] ?? 0) * (loadVolts[load] ?? 0)).toBeCloseTo(demand.watts, 5);
      }
    }
  });
});
