/** Lamps, radiator and engine: pale, since their place differs from vehicle to vehicle. */
import { cubic, roundRect } from '../curve.ts';
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, FINE, onBothSides, type Vehicle } from './pens.ts';

export function bay(vehicle: Vehicle): Shape[] {
  const { widthM: w } = vehicle;
  const { wallXM } = partsOf(vehicle);
  const reach = Math.min(1, wallXM);
  const lamp = [
    ...[0.05 * reach, w * 0.24],
    ...cubic([0.05 * reach, w * 0.24], [0.06 * reach, w * 0.16], [0.1 * reach, w * 0.11], [0.17 * reach, w * 0.09]),
    ...[0.23 * reach, w * 0.13],
    ...cubic([0.23 * reach, w * 0.13], [0.16 * reach, w * 0.15], [0.13 * reach, w * 0.19], [0.12 * reach, w * 0.24]),
  ];
  return [
    area(roundRect(0.13 * reach, w * 0.27, 0.2 * reach, w * 0.73, 0.02), FINE, null),
    area(roundRect(wallXM * 0.34, w * 0.33, wallXM * 0.84, w * 0.67, 0.08), FINE, null),
    ...onBothSides(lamp, w).map((points) => area(points, FINE, 'gridFine')),
  ];
}
