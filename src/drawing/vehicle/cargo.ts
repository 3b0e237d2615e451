/** What is behind the cabin: a boot, a load floor, an open bed, and the doors that close it. */
import { roundRect } from '../curve.ts';
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, closedHalf, EDGE, FINE, line, onBothSides, RIB, type Vehicle } from './pens.ts';

const TAIL_M = 0.07;

export function cargo(vehicle: Vehicle): Shape[] {
  const { lengthM: l, widthM: w, body } = vehicle;
  const { backXM } = partsOf(vehicle);
  const roomM = l - backXM;
  if (roomM < 0.15) return [];
  const tailX = l - TAIL_M;
  switch (body) {
    case 'hatchback':
      return [backSeats(vehicle), ...rearWindow(backXM + roomM * 0.3, backXM + roomM * 0.75, w)];
    case 'saloon':
      return [
        ...rearWindow(backXM, backXM + roomM * 0.36, w),
        area(roundRect(backXM + roomM * 0.42, w * 0.13, l - 0.06, w * 0.87, 0.08), EDGE, null),
      ];
    case 'estate':
      return [backSeats(vehicle), ...floor(vehicle, tailX - 0.2), ...rearWindow(tailX - 0.14, tailX, w)];
    case 'pickup':
      return [
        area(roundRect(backXM + 0.06, w * 0.07, tailX, w * 0.93, 0.05), EDGE, 'sheet'),
        ...floor(vehicle, tailX),
        line([backXM, 0.04, backXM, w - 0.04], { ...EDGE, widthPx: 3 }),
        line([tailX, 0.05, tailX, w - 0.05], { ...EDGE, widthPx: 3 }),
      ];
    case 'smallBus':
      return [backSeats(vehicle), ...floor(vehicle, tailX), line([tailX, 0.1, tailX, w - 0.1], EDGE)];
    case 'panelVan':
      return [
        line([backXM, 0.05, backXM, w - 0.05], { ...EDGE, widthPx: 3 }),
        ...floor(vehicle, tailX),
        // two rear doors: a gap in the middle, a hinge at either edge
        line([tailX, 0.05, tailX, w / 2 - 0.012], EDGE),
        line([tailX, w / 2 + 0.012, tailX, w - 0.05], EDGE),
        ...onBothSides([tailX, 0.12, l + 0.01, 0.12], w).map((points) => line(points, EDGE)),
      ];
  }
}

/** The line where the cargo begins. */
function backSeats(vehicle: Vehicle): Shape {
  const { backXM } = partsOf(vehicle);
  return line([backXM, vehicle.sillM, backXM, vehicle.widthM - vehicle.sillM], FINE);
}

function floor(vehicle: Vehicle, toX: number): Shape[] {
  const { backXM } = partsOf(vehicle);
  const inset = Math.min(0.14, (toX - backXM) / 4);
  return [0.2, 0.35, 0.5, 0.65, 0.8].map((share) =>
    line([backXM + inset, vehicle.widthM * share, toX - inset, vehicle.widthM * share], RIB),
  );
}

function rearWindow(fromX: number, toX: number, w: number): Shape[] {
  const half = [fromX, w / 2, fromX, w * 0.16, toX, w * 0.1, toX, w / 2];
  return [area(closedHalf(half, w), FINE, 'gridFine')];
}
