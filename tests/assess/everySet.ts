/** Every set of sizes tried one after the other, without a bound of any kind. */
import { fixedGauge } from '../../src/assess/capacity.ts';
import { stockOf } from '../../src/assess/choose/choose.ts';
import { lotsOf } from '../../src/assess/choose/lots.ts';
import { tryOut } from '../../src/assess/choose/trial.ts';
import type { Model } from '../../src/assess/model.ts';
import { type GaugeId, gauge } from '../../src/calc/conductor/gauge.ts';

/** Metal of all cables at those sizes, m x mm2. */
export const metal = ({ circuit }: Model, sizes: readonly GaugeId[]): number =>
  circuit.cables.reduce((sum, { length }, index) => sum + length.lengthM * gauge(sizes[index] as GaugeId).areaMm2, 0);

/** How many sets there are. */
export const setsOf = (model: Model): number => stockOf(model).length ** lotsOf(model).length;

/** Of all sets of one size for each lot, the least metal that breaks no rule; null when every one breaks some. */
export function leastOfEverySet(model: Model): number | null {
  const stock = stockOf(model);
  const lots = lotsOf(model);
  let best: number | null = null;
  const sizes: GaugeId[] = model.circuit.cables.map((cable) => fixedGauge(cable) ?? (stock.at(-1) as GaugeId));
  const walk = (lot: number): void => {
    const cables = lots[lot]?.cables;
    if (cables === undefined) {
      const cost = metal(model, sizes);
      if ((best === null || cost < best) && tryOut(model, sizes).breaches.length === 0) best = cost;
      return;
    }
    for (const size of stock) {
      for (const cable of cables) sizes[cable] = size;
      walk(lot + 1);
    }
  };
  walk(0);
  return best;
}
