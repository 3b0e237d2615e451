/** Where the parts of a vehicle lie along it, m from the nose, so that both views of it agree. */
import type { Vehicle } from './pens.ts';

export interface Parts {
  readonly wallXM: number;
  /** Where the cabin ends and the cargo begins. */
  readonly backXM: number;
  readonly axlesXM: readonly [front: number, rear: number];
  readonly wheelRadiusM: number;
  readonly archRadiusM: number;
  /** Rows of seats. */
  readonly rows: number;
}

const ROWS: { readonly [K in Vehicle['body']]: number } = {
  ...{ hatchback: 2, saloon: 2, estate: 2, pickup: 2, panelVan: 1, smallBus: 3 },
};
/** Ordinary ones; common practice. */
const WHEEL_RADIUS_M: { readonly [K in Vehicle['body']]: number } = {
  ...{ hatchback: 0.31, saloon: 0.32, estate: 0.32, pickup: 0.38, panelVan: 0.31, smallBus: 0.33 },
};
/** A wheel is at most this share of the height. */
const WHEEL_OF_HEIGHT = 0.22;
/** From the middle of a wheel to the rim of its arch, in radii. */
const ARCH = 1.12;
/** What is left of the body before, between and behind the arches, m. */
const BESIDE_ARCH_M = 0.06;

/** Measures that do not fit one another are clipped to the vehicle; both wheels are on it, one behind the other. */
export function partsOf({ body, lengthM, heightM, frontAxleM, wheelbaseM, bayM, cabM }: Vehicle): Parts {
  const wallXM = Math.min(bayM, lengthM);
  const wheelRadiusM = Math.min(WHEEL_RADIUS_M[body], heightM * WHEEL_OF_HEIGHT);
  const archRadiusM = ARCH * wheelRadiusM;
  const endM = archRadiusM + BESIDE_ARCH_M;
  const rearXM = Math.min(Math.max(frontAxleM + wheelbaseM, 3 * endM), lengthM - endM);
  return {
    wallXM,
    backXM: Math.min(wallXM + cabM, lengthM),
    axlesXM: [Math.min(Math.max(frontAxleM, endM), rearXM - 2 * endM), rearXM],
    wheelRadiusM,
    archRadiusM,
    rows: ROWS[body],
  };
}
