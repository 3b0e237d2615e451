/** A vehicle from its left side, nose to the left, the roof at y = 0 and the road at its height. */
import { rounded } from '../curve.ts';
import type { Shape } from '../shapes.ts';
import { partsOf } from './parts.ts';
import { area, EDGE, FINE, line, RIB, type Vehicle, WALL } from './pens.ts';
import { type Profile, profileOf, slopeXM } from './profile.ts';

/** Cables to the rear lie on a floor this high, as a share of the height. */
const FLOOR_UP = 0.3;
const ARCH_PIECES = 28;
/** A pillar between two windows. */
const PILLAR_M = 0.07;

/** Everything of it, from the bottom up. */
export function fromSide(vehicle: Vehicle): Shape[] {
  const { lengthM: l, heightM: h, body } = vehicle;
  const { wallXM, backXM, axlesXM, wheelRadiusM: r } = partsOf(vehicle);
  const profile = profileOf(vehicle);
  const edge = sideEdge(vehicle);
  const sillY = h - profile.sillUpM;
  const floorY = h * (1 - FLOOR_UP);
  const isBox = body === 'panelVan' || body === 'pickup';
  return [
    area(edge, null, 'vehicleFill'),
    ...lamps(vehicle, profile),
    ...windows(vehicle, profile).map((pane) => area(pane, FINE, 'gridFine')),
    ...doors(vehicle, profile),
    line([wallXM, sillY - 0.02, Math.max(wallXM, axlesXM[1] - r), sillY - 0.02], { ...RIB, widthPx: 4 }),
    line([backXM, floorY, Math.max(backXM, l - 0.05), floorY], EDGE),
    line(
      [backXM, h - Math.min(profile.glassUpM[0], profile.back[0][1]), backXM, floorY],
      isBox ? { ...EDGE, widthPx: 3 } : FINE,
    ),
    ...(body === 'estate' ? [rail(profile, h)] : []),
    ...axlesXM.flatMap((x): Shape[] => [
      { kind: 'circle', x, y: h - r, radius: r, stroke: EDGE, fill: 'rule' },
      { kind: 'circle', x, y: h - r, radius: r * 0.58, stroke: FINE, fill: 'sheet' },
      { kind: 'circle', x, y: h - r, radius: r * 0.14, stroke: FINE, fill: 'rule' },
    ]),
    line([wallXM, h - profile.screen[0][1], wallXM, h - underUpM(vehicle, profile, wallXM)], WALL),
    area(edge, EDGE, null),
  ];
}

/** The closed line round the body, the arches of its wheels cut out. */
export function sideEdge(vehicle: Vehicle): number[] {
  const { heightM: h } = vehicle;
  const [frontXM, rearXM] = partsOf(vehicle).axlesXM;
  const { top, sillUpM } = profileOf(vehicle);
  return rounded([
    ...top.map(([x, upM, roundM]) => [x, h - upM, roundM] as const),
    ...[rearXM, frontXM].flatMap((x) => arch(vehicle, x, sillUpM)),
  ]);
}

/** From its rear foot over its top to its front foot. */
function arch(vehicle: Vehicle, x: number, sillUpM: number): [number, number, number][] {
  const { wheelRadiusM, archRadiusM } = partsOf(vehicle);
  const foot = Math.asin((sillUpM - wheelRadiusM) / archRadiusM);
  return Array.from({ length: ARCH_PIECES + 1 }, (_, i) => {
    const angle = foot + ((Math.PI - 2 * foot) * i) / ARCH_PIECES;
    const upM = wheelRadiusM + archRadiusM * Math.sin(angle);
    return [x + archRadiusM * Math.cos(angle), vehicle.heightM - upM, 0];
  });
}

/** How high the lower edge of the body is there. */
function underUpM(vehicle: Vehicle, { sillUpM }: Profile, x: number): number {
  const { axlesXM, wheelRadiusM, archRadiusM } = partsOf(vehicle);
  const near = axlesXM.map((axle) => Math.abs(axle - x)).filter((m) => m < archRadiusM);
  return Math.max(sillUpM, ...near.map((m) => wheelRadiusM + Math.sqrt(archRadiusM ** 2 - m ** 2)));
}

/** Side windows between the windscreen, the pillars and the back; one too narrow to be seen is left out. */
function windows({ heightM: h }: Vehicle, profile: Profile): number[][] {
  const { screen, back, glassUpM, pillarsXM, isGlazedToBack } = profile;
  const frameM = Math.min(0.12, 0.08 * h);
  const upright = (x: number) => () => x;
  const ends = [
    (upM: number) => slopeXM(screen, upM) + frameM,
    ...pillarsXM.map(upright),
    ...(isGlazedToBack ? [(upM: number) => slopeXM(back, upM) - frameM] : []),
  ];
  return ends.slice(1).flatMap((end, i) => {
    const [low, high] = glassUpM;
    const from = (upM: number) => (ends[i]?.(upM) ?? 0) + (i > 0 ? PILLAR_M / 2 : 0);
    // a pillar gives way to the slope of the back
    const to = (upM: number) => Math.min(end(upM) - PILLAR_M / 2, slopeXM(back, upM) - frameM);
    if (to(low) - from(low) < PILLAR_M || to(high) - from(high) < 0) return [];
    return [
      rounded([
        [from(low), h - low, 0.02],
        [from(high), h - high, 0.04],
        [to(high), h - high, 0.04],
        [to(low), h - low, 0.03],
      ]),
    ];
  });
}

/** Gaps at the pillars down to the sill or the arch, a handle before each, and the rail of a sliding door. */
function doors(vehicle: Vehicle, profile: Profile): Shape[] {
  const { heightM: h, body, lengthM: l } = vehicle;
  const { screen, glassUpM, pillarsXM } = profile;
  const firstXM = slopeXM(screen, glassUpM[0]);
  const handleY = h - glassUpM[0] + 0.05 * h;
  const gap = (x: number) => line([x, h - glassUpM[0], x, h - underUpM(vehicle, profile, x)], FINE);
  const [lastXM = l] = pillarsXM.slice(-1);
  const railY = h * 0.46;
  const slides = body === 'panelVan' || body === 'smallBus';
  return [
    ...[firstXM, ...pillarsXM].map(gap),
    ...pillarsXM.map((x) => line([Math.max(x - 0.2, firstXM), handleY, Math.max(x - 0.06, firstXM), handleY], EDGE)),
    ...(slides && lastXM < l - 0.3 ? [line([lastXM, railY, l - 0.15, railY], FINE)] : []),
  ];
}

function lamps({ lengthM: l, heightM: h }: Vehicle, { hood: [[noseXM, noseUpM]] }: Profile): Shape[] {
  const noseY = h - noseUpM;
  const deepM = 0.07 * h;
  const front = [
    ...[0.03, noseY + deepM, noseXM, noseY + deepM * 0.35],
    ...[noseXM + 0.16, noseY + deepM * 0.3, noseXM + 0.08, noseY + deepM * 1.1],
  ];
  return [
    area(front, FINE, 'sheet'),
    area([l - 0.02, h * 0.5, l - 0.02, h * 0.6, l - 0.1, h * 0.6, l - 0.08, h * 0.5], FINE, 'rule'),
  ];
}

/** A rail along the roof, on two feet. */
function rail({ screen, back, roofUpM }: Profile, h: number): Shape {
  const roofY = h - roofUpM;
  const [fromX, toX] = [screen[1][0] + 0.12, Math.max(back[1][0] - 0.1, screen[1][0] + 0.2)];
  return line([fromX, roofY, fromX + 0.06, roofY * 0.35, toX - 0.06, roofY * 0.35, toX, roofY], EDGE);
}
