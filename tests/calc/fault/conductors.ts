import type { Cable } from '../../../src/calc/conductor/tableCurrent.ts';
import { thermalOf } from '../../../src/calc/conductor/thermal.ts';
import type { FaultConductor } from '../../../src/calc/fault/damage.ts';
import { gaugeId } from '../conductor/gaugeId.ts';

export const AWG_4: Cable = { gauge: gaugeId('awg:4'), material: 'copper', insulationC: 105 };

/** A cable as a short finds it; unless told, at the air's 50 °C. */
export function faultConductor(cable: Cable, startC = 50, ambientC = 50): FaultConductor {
  return { thermal: thermalOf(cable), insulationC: cable.insulationC, startC, ambientC };
}
