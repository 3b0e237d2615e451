import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { stretchesOf } from '../../src/assess/surroundings.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

/** A battery at x 0.5 in the bay, an amplifier at x 3.5 in the cargo space, one run straight between them. */
function straight(areas: Plan['areas']): Plan {
  const { plan } = new PlanOf()
    .battery('battery', { at: { xM: 0.5, yM: 0.9 } })
    .amplifier('amp', { at: { xM: 3.5, yM: 0.9 } })
    .run('battery.positive', 'amp.supply', null, { id: 'feed', zone: 'auto' });
  return { ...plan, areas };
}

const area = (id: string, zone: Plan['areas'][number]['zone'], fromXM: number, toXM: number) => ({
  id,
  name: '',
  sheetId: 'sheet',
  zone,
  outline: [
    { xM: fromXM, yM: 0.5 },
    { xM: toXM, yM: 0.5 },
    { xM: toXM, yM: 1.3 },
    { xM: fromXM, yM: 1.3 },
  ],
});

function zonesOf(plan: Plan) {
  const [run] = plan.runs;
  if (run === undefined) throw new Error('no run');
  return stretchesOf(plan, run, 3).map(({ zone, lengthM }) => [zone, Number(lengthM.toFixed(6))]);
}

describe('areas marked on a sheet', () => {
  it('say what lies in them, before the outline does', () => {
    expect(zonesOf(straight([]))).toEqual([
      ['bay', 0.5],
      ['cabin', 1.5],
      ['cargo', 1],
    ]);
    expect(zonesOf(straight([area('exhaust', 'hot', 0.7, 0.9)]))).toEqual([
      ['bay', 0.2],
      ['hot', 0.2],
      ['bay', 0.1],
      ['cabin', 1.5],
      ['cargo', 1],
    ]);
  });

  it('leave the hotter one where two overlap, whichever was drawn first', () => {
    const [wing, hot] = [area('wing', 'wing', 0.6, 1), area('hot', 'hot', 0.8, 1)];
    for (const areas of [
      [wing, hot],
      [hot, wing],
    ]) {
      expect(zonesOf(straight(areas)).slice(0, 3)).toEqual([
        ['bay', 0.1],
        ['wing', 0.2],
        ['hot', 0.2],
      ]);
    }
  });

  it('hold for fittings too, and say nothing while they are unmarked or on another sheet', () => {
    const over = (patch: object) => straight([{ ...area('a', 'hot', 0.4, 0.6), ...patch }]);
    const atBattery = (plan: Plan) =>
      assess({ ...plan, fittings: plan.fittings.map((fitting) => ({ ...fitting, zone: 'auto' as const })) }).zones
        .battery;
    expect(atBattery(over({}))).toBe('hot');
    expect(atBattery(over({ zone: 'auto' }))).toBe('bay');
    expect(atBattery(over({ sheetId: 'other' }))).toBe('bay');
  });
});
