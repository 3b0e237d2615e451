/** A vehicle from its left side, nose to the left, the roof at y = 0 and the road at its height. */
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, EDGE, FINE, line, RIB, type Vehicle, WALL } from './pens.ts';

/** Heights as shares of the vehicle's height, counted down from the roof. */
const BELT = 0.42;
const HOOD = 0.46;
const SILL = 0.84;

/** Everything of it, from the bottom up. */
export function fromSide(vehicle: Vehicle): Shape[] {
  const { lengthM: l, heightM: h } = vehicle;
  const { wallXM, backXM, axlesXM, wheelRadiusM: r, rows } = partsOf(vehicle);
  const cabM = backXM - wallXM;
  const edge = silhouette(vehicle);
  const doorX = wallXM + cabM * (rows === 1 ? 0.9 : 0.5);
  const floorY = h * 0.7;
  return [
    area(edge, null, 'vehicleFill'),
    line([wallXM + cabM * 0.1, h * BELT, backXM, h * BELT], FINE),
    ...[wallXM + cabM * 0.1, doorX, ...(rows > 1 ? [backXM - cabM * 0.04] : [])].map((x) =>
      line([x, h * BELT, x, h * SILL], FINE),
    ),
    line([wallXM, h * SILL, Math.max(wallXM, axlesXM[1] - r), h * SILL], { ...RIB, widthPx: 4 }),
    line([backXM, floorY, l - 0.05, floorY], EDGE),
    ...axlesXM.flatMap((x): Shape[] => [
      { kind: 'circle', x, y: h - r, radius: r, stroke: EDGE, fill: 'rule' },
      { kind: 'circle', x, y: h - r, radius: r * 0.5, stroke: FINE, fill: 'sheet' },
    ]),
    line([wallXM, h * HOOD, wallXM, h * SILL], WALL),
    area(edge, EDGE, null),
  ];
}

function silhouette(vehicle: Vehicle): number[] {
  const { lengthM: l, heightM: h, body } = vehicle;
  const { wallXM, backXM } = partsOf(vehicle);
  const cabM = backXM - wallXM;
  const roofX = wallXM + cabM * (body === 'panelVan' || body === 'smallBus' ? 0.28 : 0.4);
  const roomM = l - backXM;
  const tails: { readonly [K in Vehicle['body']]: readonly number[] } = {
    hatchback: [backXM + roomM * 0.2, 0.02 * h, l - 0.05, h * BELT],
    saloon: [backXM - cabM * 0.12, 0.01 * h, backXM + roomM * 0.42, h * BELT * 0.95, l, h * BELT],
    estate: [l - roomM * 0.25, 0.01 * h, l - 0.03, h * BELT],
    pickup: [backXM - 0.08, 0, backXM, h * BELT, l, h * BELT],
    panelVan: [l - 0.06, 0, l, h * 0.06],
    smallBus: [l - 0.1, 0, l - 0.02, h * BELT],
  };
  return [
    ...[0, h * SILL, 0, h * 0.6, wallXM * 0.12, h * (HOOD + 0.06), wallXM, h * HOOD],
    ...[wallXM + cabM * 0.05, h * BELT, roofX, 0.02 * h, roofX + cabM * 0.1, 0],
    ...tails[body],
    ...[l, h * 0.6, l, h * SILL],
  ];
}
