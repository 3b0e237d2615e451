/** A cable as a short finds it: hot from the music, in the hottest air it lies in. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import type { FaultConductor } from '../../calc/fault/damage.ts';
import type { Facts } from '../facts.ts';
import { insulationOf } from '../model.ts';
import { ambientC } from '../surroundings.ts';
import { wireOf } from '../wire.ts';

/**
 * The conductor of a cable when a short sets in: at the temperature that the heating current holds it at, in its hottest
 * stretch; at its class where that cannot be told.
 */
export function faultConductor({ model, operating }: Facts, index: number, size: GaugeId): FaultConductor | null {
  const cable = model.circuit.cables[index];
  if (cable === undefined) return null;
  const classC = insulationOf(cable);
  let airC = -Infinity;
  for (const { zone } of cable.stretches) airC = Math.max(airC, ambientC(model.settings, zone));
  let settledC = -Infinity;
  for (const { stretchC } of operating?.states ?? [])
    for (const hotC of stretchC[index] ?? []) settledC = Math.max(settledC, hotC ?? classC);
  if (settledC === -Infinity) settledC = classC;
  return {
    // wrapped or bundled it sheds less, so that a slow clearing leaves it hotter
    thermal: wireOf(cable, size).thermal(),
    insulationC: classC,
    ambientC: airC,
    startC: Math.max(settledC, airC),
  };
}
