/** The overload that a fuse need never end, where the air is hot. */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { overloadLimitC } from '../calc/tables/adiabatic.ts';
import { OPENING_MULTIPLE } from '../calc/tables/fuseTimes.ts';
import { exceeds, hottestC } from './conductor.ts';
import { insulationOf, type Model } from './model.ts';
import { ampacityZone, type MarkedZone } from './surroundings.ts';

const isInBay = (zone: MarkedZone): boolean => ampacityZone(zone) === 'bay';

export interface Overloaded {
  readonly currentA: number;
  /** null: it finds no temperature to settle at. */
  readonly conductorC: number | null;
  readonly limitC: number;
}

/**
 * A cable in the engine bay under 1.35 x what its fuses let in, held: null while it stays within class + 50 K there.
 * Elsewhere the overload is accepted by I2 <= 1.45 Iz. Sources: our rules, section 4; ISO 6722-1 (memory).
 */
export function hotAtOverload(model: Model, cable: number, size: GaugeId, limitA: number): Overloaded | null {
  const found = model.circuit.cables[cable];
  if (found === undefined || limitA === Infinity || limitA === 0) return null;
  if (!found.stretches.some(({ zone }) => isInBay(zone))) return null;
  const currentA = OPENING_MULTIPLE * limitA;
  const conductorC = hottestC(model, cable, size, currentA, isInBay);
  const limitC = overloadLimitC(insulationOf(found));
  return conductorC === null || exceeds(conductorC, limitC) ? { currentA, conductorC, limitC } : null;
}
