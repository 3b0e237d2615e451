/** Windscreen, seats, steering wheel and door lines. Sizes of seats and wheel are ordinary ones (common practice). */
import { cubic, roundRect } from '../curve.ts';
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, closedHalf, EDGE, FINE, line, onBothSides, type Vehicle } from './pens.ts';

const STEERING_WHEEL_RADIUS_M = 0.19;
/** Seats and wheel stand this far from the side, as a share of the width. */
const DRIVER_OF_WIDTH = 0.28;
const SEAT_M = 0.5;
/** From the firewall to the cushion of the front seats. */
const LEGS_M = 0.62;

export function cabin(vehicle: Vehicle, isMirrored: boolean): Shape[] {
  const { widthM: w } = vehicle;
  const { wallXM, backXM, rows } = partsOf(vehicle);
  const cabM = backXM - wallXM;
  const seatM = Math.min(SEAT_M, cabM / (rows + 1), w * 0.34);
  const first = rows === 1 ? Math.max(cabM - seatM - 0.12, cabM * 0.3) : Math.min(LEGS_M, cabM * 0.28);
  const last = Math.max(cabM - seatM - 0.06, first);
  const rowX = (row: number) => wallXM + (rows === 1 ? first : first + ((last - first) * row) / (rows - 1));
  const pillars = [wallXM + cabM * 0.08, rowX(0) + seatM, ...(rows > 1 ? [rowX(1) + seatM * 0.75] : [])];
  return [
    ...screen(vehicle, wallXM, cabM),
    ...[DRIVER_OF_WIDTH, 1 - DRIVER_OF_WIDTH].flatMap((share) => seat(rowX(0), w * share, seatM, seatM)),
    ...Array.from({ length: rows - 1 }, (_, row) => seat(rowX(row + 1), w / 2, seatM, w * 0.7)).flat(),
    ...steeringWheel(rowX(0) - 0.2 * (first / LEGS_M), w * (isMirrored ? DRIVER_OF_WIDTH : 1 - DRIVER_OF_WIDTH), first),
    ...doorLines(vehicle, pillars, cabM),
  ];
}

/** A cushion with its back at the rear. */
function seat(x: number, y: number, depthM: number, acrossM: number): Shape[] {
  const back = depthM * 0.22;
  return [
    area(roundRect(x, y - acrossM / 2, x + depthM, y + acrossM / 2, 0.09), FINE, 'sheet'),
    area(roundRect(x + depthM - back, y - acrossM / 2 + 0.03, x + depthM, y + acrossM / 2 - 0.03, 0.05), FINE, null),
  ];
}

/** Seen from above with the nose at the left, the vehicle's right side is at the top. */
function steeringWheel(x: number, y: number, roomM: number): Shape[] {
  const radius = Math.max(0.155, Math.min(STEERING_WHEEL_RADIUS_M, roomM * 0.3));
  return [
    { kind: 'circle', x, y, radius, stroke: { ...EDGE, widthPx: 3 }, fill: null },
    { kind: 'circle', x, y, radius: 0.05, stroke: FINE, fill: 'vehicleLine' },
    line([x, y - radius, x, y + radius], FINE),
  ];
}

function screen({ widthM: w }: Vehicle, wallXM: number, cabM: number): Shape[] {
  const deep = Math.min(0.42, cabM * 0.25);
  const x = wallXM + Math.min(0.05, cabM * 0.04);
  const half = [
    ...[x, w / 2],
    ...cubic([x, w / 2], [x, w * 0.25], [x + deep * 0.05, w * 0.09], [x + deep * 0.24, w * 0.05]),
    ...[x + deep, w * 0.1],
    ...cubic([x + deep, w * 0.1], [x + deep * 0.81, w * 0.17], [x + deep * 0.76, w * 0.35], [x + deep * 0.76, w / 2]),
  ];
  return [area(closedHalf(half, w), FINE, 'gridFine')];
}

/** Gaps before, between and behind the doors on either side, and the mirrors. */
function doorLines(vehicle: Vehicle, pillars: readonly number[], cabM: number): Shape[] {
  const { widthM: w } = vehicle;
  const { wallXM } = partsOf(vehicle);
  const deep = Math.min(vehicle.sillM * 1.4, w / 5);
  const m = wallXM + Math.min(0.3, cabM * 0.2);
  const mirror = [m + 0.04, 0, m, -0.09, m + 0.1, -0.1, m + 0.14, 0];
  return [
    ...pillars.flatMap((x) => onBothSides([x, 0, x, deep], w).map((points) => line(points, EDGE))),
    ...onBothSides(mirror, w).map((points) => area(points, FINE, 'rule')),
  ];
}
