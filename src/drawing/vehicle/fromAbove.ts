/**
 * A vehicle seen from above, nose to the left: our own drawing, in soft grey, only as detailed as it takes to know where
 * one is. It follows the outline's own measures; what else is drawn carries no meaning for the answer.
 */
import type { Shape } from '../shapes.ts';
import { bay } from './bay.ts';
import { bodyEdge, sills, wheels } from './bodyEdge.ts';
import { cabin } from './cabin.ts';
import { cargo } from './cargo.ts';
import { partsOf } from './parts.ts';
import { area, EDGE, line, type Vehicle, WALL } from './pens.ts';

/** Everything of it, from the bottom up. */
export function fromAbove(vehicle: Vehicle, isMirrored: boolean): Shape[] {
  const edge = bodyEdge(vehicle);
  const { wallXM } = partsOf(vehicle);
  return [
    area(edge, null, 'vehicleFill'),
    ...sills(vehicle),
    ...wheels(vehicle),
    ...bay(vehicle),
    ...cabin(vehicle, isMirrored),
    ...cargo(vehicle),
    line([wallXM, 0.03, wallXM, vehicle.widthM - 0.03], WALL),
    area(edge, EDGE, null),
  ];
}
