import type { AmpacityCase } from '../calc/conductor/ampacity.ts';
import { type GaugeId, isGaugeId } from '../calc/conductor/gauge.ts';
import type { Cable } from './circuit.ts';
import { cableOf, type Model } from './model.ts';
import { perModel } from './perModel.ts';
import { ambientC, ampacityZone, type MarkedZone } from './surroundings.ts';
import { wireOf } from './wire.ts';

export const ampacityCase = (model: Model, cable: Cable, gauge: GaugeId, zone: MarkedZone): AmpacityCase => ({
  ...cableOf(cable, gauge),
  zone: ampacityZone(zone),
  ambientC: ambientC(model.settings, zone),
});

/** The zone of a cable that leaves it the least ampacity, and that ampacity, A. */
export function worstZone(model: Model, cable: Cable, gauge: GaugeId): { zone: MarkedZone; ampacityA: number } {
  const wire = wireOf(cable, gauge);
  let worst: { zone: MarkedZone; ampacityA: number } | null = null;
  for (const { zone } of cable.stretches) {
    const here = wire.ampacityA(ampacityZone(zone), ambientC(model.settings, zone));
    if (worst === null || here < worst.ampacityA) worst = { zone, ampacityA: here };
  }
  return worst ?? { zone: 'cabin', ampacityA: 0 };
}

const ampacities = perModel(() => new Map<Cable, Map<GaugeId, number>>());

/** Ampacity of a cable at a size: that of its worst zone, A. Worked out once for each model, cable and size. */
export function cableAmpacityA(model: Model, cable: Cable, gauge: GaugeId): number {
  const all = ampacities(model);
  const table = all.get(cable) ?? new Map<GaugeId, number>();
  const before = table.get(gauge);
  if (before !== undefined) return before;
  const { ampacityA } = worstZone(model, cable, gauge);
  table.set(gauge, ampacityA);
  all.set(cable, table);
  return ampacityA;
}

/** The size fixed by hand, of the run or of one it is joined to; null when the answer chooses it. */
export function fixedGauge({ conductor }: Cable): GaugeId | null {
  const { size } = conductor;
  return size !== 'auto' && isGaugeId(size) ? size : null;
}
