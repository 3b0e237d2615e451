/** Where the parts of a vehicle lie along it, m from the nose, so that both views of it agree. */
import type { Vehicle } from './pens.ts';

export interface Parts {
  readonly wallXM: number;
  /** Where the cabin ends and the cargo begins. */
  readonly backXM: number;
  readonly axlesXM: readonly [front: number, rear: number];
  readonly wheelRadiusM: number;
  /** Rows of seats. */
  readonly rows: number;
}

const ROWS: { readonly [K in Vehicle['body']]: number } = {
  ...{ hatchback: 2, saloon: 2, estate: 2, pickup: 2, panelVan: 1, smallBus: 3 },
};
const WHEEL_RADIUS_M = 0.31;

/** Measures that do not fit one another are clipped to the vehicle. */
export function partsOf({ body, lengthM, heightM, frontAxleM, wheelbaseM, bayM, cabM }: Vehicle): Parts {
  const wallXM = Math.min(bayM, lengthM);
  const wheelRadiusM = Math.min(WHEEL_RADIUS_M, heightM / 4);
  return {
    wallXM,
    backXM: Math.min(wallXM + cabM, lengthM),
    axlesXM: [Math.min(frontAxleM, lengthM), Math.min(frontAxleM + wheelbaseM, lengthM)],
    wheelRadiusM,
    rows: ROWS[body],
  };
}
