/** The edge of the body and its wheels from above, and the sills along which cables run to the rear. */
import { cubic, roundRect } from '../curve.ts';
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, closedHalf, FINE, onBothSides, type Vehicle } from './pens.ts';

const WHEEL_WIDTH_M = 0.19;
/** Wheels stand this far inside the wings. */
const INSET_M = 0.025;

/** How far nose and tail are rounded off: along the vehicle, m. */
const ROUNDING: { readonly [K in Vehicle['body']]: readonly [nose: number, tail: number] } = {
  hatchback: [0.5, 0.35],
  saloon: [0.55, 0.45],
  estate: [0.55, 0.22],
  pickup: [0.4, 0.08],
  panelVan: [0.4, 0.1],
  smallBus: [0.4, 0.14],
};

/** A closed line round the body, nose at x = 0, tail at its length. */
export function bodyEdge({ body, lengthM: l, widthM: w }: Vehicle): number[] {
  const [nose, tail] = ROUNDING[body].map((m) => Math.min(m, l / 4)) as [number, number];
  const noseY = w * 0.09;
  const tailY = Math.min(tail, w * 0.2);
  const half = [
    ...[0, w / 2],
    ...cubic([0, w / 2], [0, w * 0.26], [nose * 0.1, w * 0.12], [nose * 0.35, noseY * 0.7]),
    ...cubic([nose * 0.35, noseY * 0.7], [nose * 0.6, noseY * 0.25], [nose * 0.7, 0], [nose, 0]),
    ...[l - tail, 0],
    ...cubic([l - tail, 0], [l - tail * 0.3, 0], [l, tailY * 0.4], [l, tailY]),
    ...[l, w / 2],
  ];
  return closedHalf(half, w);
}

/** All four, on the axles. */
export function wheels(vehicle: Vehicle): Shape[] {
  const { axlesXM, wheelRadiusM: r } = partsOf(vehicle);
  return axlesXM.flatMap((x) =>
    onBothSides(roundRect(x - r, INSET_M, x + r, INSET_M + WHEEL_WIDTH_M, 0.06), vehicle.widthM).map((points) =>
      area(points, FINE, 'rule'),
    ),
  );
}

/** Pale bands from the firewall to the rear wheels. */
export function sills(vehicle: Vehicle): Shape[] {
  const { wallXM, axlesXM, wheelRadiusM } = partsOf(vehicle);
  const toX = Math.max(axlesXM[1] - wheelRadiusM - 0.08, wallXM + 0.1);
  const sillM = Math.min(vehicle.sillM, vehicle.widthM / 4);
  return onBothSides([wallXM, 0.01, toX, 0.01, toX, sillM, wallXM, sillM], vehicle.widthM).map((points) =>
    area(points, null, 'gridCoarse'),
  );
}
