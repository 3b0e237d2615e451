/**
 * The side of each kind of vehicle, by the outline's own measures: nose to the left, heights counted up from the road.
 * What is behind the windscreen follows where the cabin ends, so that a longer bay or cabin shows as one.
 */
import type { Corner } from '../curve.ts';
import { partsOf } from './parts.ts';
import type { Vehicle } from './pens.ts';

/** A place on the side, its height counted up from the road. */
type Spot = readonly [xM: number, upM: number];
/** Two ends of a sloping line. */
type Slope = readonly [low: Spot, high: Spot];

export interface Profile {
  /** From the lower end of the nose over the roof to the lower end of the tail, heights up. */
  readonly top: readonly Corner[];
  /** Lower edge of the body. */
  readonly sillUpM: number;
  readonly screen: Slope;
  /** The end of the cabin or, where the roof goes on, of the load. */
  readonly back: Slope;
  /** Lower and upper edge of the side windows. */
  readonly glassUpM: readonly [low: number, high: number];
  /** Where windows and doors end, between windscreen and back. */
  readonly pillarsXM: readonly number[];
  /** Behind the last pillar there is a window too. */
  readonly isGlazedToBack: boolean;
  /** The front edge of the hood, and its end at the windscreen. */
  readonly hood: Slope;
  readonly roofUpM: number;
}

/** Heights as shares of the vehicle's, lengths in metres. Source: our choice, from ordinary vehicles. */
interface Form {
  readonly clearanceM: number;
  readonly hood: readonly [nose: number, cowl: number];
  /** From the firewall to the foot of the windscreen; below zero it stands before the firewall. */
  readonly screenFootM: number;
  readonly screenRunM: number;
  readonly glass: readonly [low: number, high: number];
  readonly roof: number;
  /** As shares of the cabin's length. */
  readonly pillars: readonly number[];
  readonly isGlazedToBack: boolean;
  /** Upper and lower end of the back, and the height at which the tail begins. */
  back(measures: Measures): { high: Spot; low: Spot; tail: number };
}

/** With heights of 1 for the vehicle's own. */
interface Measures {
  readonly lengthM: number;
  readonly backXM: number;
  readonly cabM: number;
  /** Behind the cabin. */
  readonly roomM: number;
}

const car = { hood: [0.5, 0.635], glass: [0.665, 0.925], roof: 0.985, screenFootM: 0.06, clearanceM: 0.19 } as const;
const box = { hood: [0.5, 0.6], glass: [0.615, 0.9], roof: 0.985, screenFootM: -0.18, clearanceM: 0.2 } as const;

const FORMS: { readonly [K in Vehicle['body']]: Form } = {
  hatchback: {
    ...{ ...car, screenRunM: 0.85, pillars: [0.48, 0.9], isGlazedToBack: false },
    back: ({ lengthM, backXM, cabM, roomM }) => ({
      high: [Math.min(backXM + 0.56 * roomM, lengthM - 0.14 * cabM), 0.945],
      low: [lengthM - 0.05, 0.64],
      tail: 0.56,
    }),
  },
  saloon: {
    ...{ ...car, screenRunM: 0.88, pillars: [0.47, 0.88], isGlazedToBack: false },
    back({ lengthM, backXM, cabM, roomM }) {
      const deckXM = Math.min(backXM + 0.42 * roomM, lengthM - 0.1);
      return { high: [Math.min(backXM - 0.07 * cabM, deckXM - 0.15 * cabM), 0.95], low: [deckXM, 0.69], tail: 0.66 };
    },
  },
  estate: {
    ...{ ...car, screenRunM: 0.85, roof: 0.955, pillars: [0.47, 0.88], isGlazedToBack: true, glass: [0.655, 0.895] },
    back: ({ lengthM, cabM }) => ({
      high: [lengthM - Math.min(0.3, 0.14 * cabM), 0.925],
      low: [lengthM - 0.06, 0.64],
      tail: 0.56,
    }),
  },
  pickup: {
    ...{ ...car, hood: [0.53, 0.62], screenRunM: 0.62, pillars: [0.52], isGlazedToBack: true, clearanceM: 0.32 },
    back({ lengthM, backXM, cabM }) {
      const wallXM = Math.min(backXM, lengthM - 0.1);
      return { high: [wallXM - 0.05 * cabM, 0.96], low: [wallXM, 0.6], tail: 0.6 };
    },
  },
  panelVan: {
    ...{ ...box, screenRunM: 0.75, pillars: [0.94], isGlazedToBack: false },
    back: ({ lengthM, cabM }) => ({
      high: [lengthM - Math.min(0.07, 0.04 * cabM), 0.985],
      low: [lengthM, 0.78],
      tail: 0.6,
    }),
  },
  smallBus: {
    ...{ ...box, screenRunM: 0.72, pillars: [0.3, 0.62, 0.94], isGlazedToBack: true },
    back: ({ lengthM, cabM }) => ({
      high: [lengthM - Math.min(0.18, 0.05 * cabM), 0.985],
      low: [lengthM - 0.02, 0.6],
      tail: 0.52,
    }),
  },
};

/** Roundings are those of a vehicle this high, and smaller on a lower one, m. */
const USUAL_HEIGHT_M = 1.45;
/** At most these shares of the length are bay, at least these cabin: so that any measures give a vehicle. */
const MOST_BAY = 0.55;
const LEAST_CABIN = 0.2;

export function profileOf(vehicle: Vehicle): Profile {
  const { body, lengthM, heightM: h } = vehicle;
  const parts = partsOf(vehicle);
  const form = FORMS[body];
  const wallXM = Math.min(parts.wallXM, MOST_BAY * lengthM);
  const backXM = Math.max(parts.backXM, wallXM + LEAST_CABIN * lengthM);
  const cabM = backXM - wallXM;
  const up = ([xM, share]: Spot): Spot => [xM, share * h];
  const { high, low, tail } = form.back({ lengthM, backXM, cabM, roomM: lengthM - backXM });
  const footXM = wallXM + Math.max(Math.min(form.screenFootM, 0.05 * cabM), -0.3 * wallXM);
  const screen: Slope = [
    up([footXM, form.hood[1]]),
    up([footXM + Math.min(form.screenRunM, 0.4 * cabM), form.roof - 0.02]),
  ];
  const back: Slope = [up(low), up(high)];
  const sillUpM = Math.min(form.clearanceM, 0.16 * h);
  const hood: Slope = [up([Math.min(0.12, 0.05 * h, 0.3 * wallXM), form.hood[0]]), screen[0]];
  const corners: readonly Corner[] = [
    [0.04, sillUpM, 0.03],
    [0, 0.24 * h, 0.06],
    [0, 0.42 * h, 0.08],
    [...hood[0], 0.16],
    [...screen[0], 0.2],
    [...screen[1], 0.28],
    [screen[1][0] + 0.4 * (high[0] - screen[1][0]), form.roof * h, 0.6],
    [...back[1], body === 'panelVan' ? 0.1 : 0.22],
    [...back[0], 0.1],
    ...(body === 'saloon' || body === 'pickup' ? [[lengthM - 0.03, tail * h, 0.08] as const] : []),
    [lengthM, Math.min(tail - 0.05, 0.55) * h, 0.08],
    [lengthM, 0.26 * h, 0.06],
    [lengthM - 0.05, sillUpM, 0.03],
  ];
  return {
    top: corners.map(([xM, upM, roundM]) => [xM, upM, roundM * Math.min(1, h / USUAL_HEIGHT_M)]),
    sillUpM,
    screen,
    back,
    glassUpM: [form.glass[0] * h, form.glass[1] * h],
    pillarsXM: form.pillars.map((share) => wallXM + share * cabM),
    isGlazedToBack: form.isGlazedToBack,
    hood,
    roofUpM: form.roof * h,
  };
}

/** Where a sloping line is at a height. */
export const slopeXM = ([[lowXM, lowUpM], [highXM, highUpM]]: Slope, upM: number): number =>
  lowXM + ((upM - lowUpM) / (highUpM - lowUpM)) * (highXM - lowXM);
