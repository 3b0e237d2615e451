/** A place in a part of an outline: where it is wished, or where its edge or something else is in the way, near there. */
import { distance, distanceToSegment, type Point as Place } from '../geom/point.ts';
import { polygonHolds, sidesOf } from '../geom/polygon.ts';
import { roundPoint } from './round.ts';
import type { Point } from './schema.ts';

/** Nearer than this two things stand on one spot, m. */
const SAME_SPOT_M = 0.05;
/** A wish nearer to the edge than this is not taken, m: half of what stands there would be outside. */
const MARGIN_M = 0.05;
/** Plates nearer than this hide each other, m. */
const CLEAR_M = 0.24;
/** On one spot is worse than anything else, as metres away from the wish. */
const ON_ONE_SPOT = 20;
/** Columns looked at in a part, and places looked at in each. */
const PIECES = 16;

interface Stretch {
  readonly fromXM: number;
  readonly toXM: number;
}

/** How far the nearest of those is, m. */
const nearestM = (place: Place, taken: readonly Place[]): number =>
  Math.min(Infinity, ...taken.map((other) => distance(other, place)));

/** Whether it is where something stands already. */
export const isOnOneSpot = (place: Place, taken: readonly Place[]): boolean => nearestM(place, taken) < SAME_SPOT_M;

const edgeM = (edge: readonly Place[], place: Place): number =>
  Math.min(...[...sidesOf(edge)].map(([a, b]) => distanceToSegment(a, b, place)));

/** Where a line across the outline is inside its edge, y in m, from the right side on. */
export function spansAt(edge: readonly Place[], xM: number): (readonly [fromYM: number, toYM: number])[] {
  const crossings = [...sidesOf(edge)]
    .filter(([a, b]) => a.xM > xM !== b.xM > xM)
    .map(([a, b]) => a.yM + ((xM - a.xM) / (b.xM - a.xM)) * (b.yM - a.yM))
    .sort((a, b) => a - b);
  return crossings.flatMap((fromYM, index) => {
    const toYM = crossings[index + 1];
    return index % 2 === 0 && toYM !== undefined ? [[fromYM, toYM] as const] : [];
  });
}

/** Places spread over what of the stretch is inside the edge. */
function spread(edge: readonly Place[], { fromXM, toXM }: Stretch): Place[] {
  const steps = Array.from({ length: PIECES - 1 }, (_, index) => (index + 1) / PIECES);
  return steps.flatMap((along) => {
    const xM = fromXM + (toXM - fromXM) * along;
    return spansAt(edge, xM).flatMap(([fromYM, toYM]) =>
      steps.map((across) => ({ xM, yM: fromYM + (toYM - fromYM) * across })),
    );
  });
}

/** The wished place itself where it is free; one elsewhere in the outline only where the edge leaves all of the part out. */
export function placeWithin(edge: readonly Place[], part: Stretch, wished: Place, taken: readonly Place[]): Point {
  if (polygonHolds(edge, wished) && edgeM(edge, wished) >= MARGIN_M && !isOnOneSpot(wished, taken))
    return roundPoint(wished);
  const reach = reachOf(edge);
  const fromXM = Math.max(part.fromXM, reach.fromXM);
  const toXM = Math.min(part.toXM, reach.toXM);
  const lack = (m: number, enoughM: number) => Math.max(0, enoughM - m) / enoughM;
  const cost = (place: Place) => {
    const clearM = nearestM(place, taken);
    const crowded = lack(clearM, CLEAR_M) + ON_ONE_SPOT * lack(clearM, SAME_SPOT_M);
    return distance(place, wished) + crowded + lack(edgeM(edge, place), MARGIN_M);
  };
  const [best] = spread(edge, fromXM < toXM ? { fromXM, toXM } : reach)
    .map((place) => ({ place, cost: cost(place) }))
    .sort((a, b) => a.cost - b.cost);
  return roundPoint(best?.place ?? wished);
}

function reachOf(edge: readonly Place[]): Stretch {
  const xsM = edge.map(({ xM }) => xM);
  return { fromXM: Math.min(...xsM), toXM: Math.max(...xsM) };
}
