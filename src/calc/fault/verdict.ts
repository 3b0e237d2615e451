import { temperatureAfterC } from '../conductor/shortHeating.ts';
import { bandBreaksA, type FusePart } from '../fuse/timeCurrent.ts';
import { overloadLimitC, SHORT_TIME_S } from '../tables/adiabatic.ts';
import { damageSeconds, excessK, type FaultConductor, sustainedA } from './damage.ts';
import { type FaultPoint, type FuseCurrent, faultAt, pathTimes } from './point.ts';

/** A fuse that clears the conductor when it opens, with its own current at either end of the range. */
export interface FaultFuse extends FusePart {
  readonly atLowestA: number;
  readonly atHighestA: number;
}

/** A short somewhere, as one conductor on its way sees it: from the lowest to the highest prospective current. */
export interface FaultCase {
  readonly conductor: FaultConductor;
  readonly lowestA: number;
  readonly highestA: number;
  /** Every fuse that clears this conductor by opening alone; none: []. */
  readonly fuses: readonly FaultFuse[];
}

export interface FaultVerdict {
  /** The worst current of the whole range, ends included. */
  readonly worst: FaultPoint;
  readonly lowest: FaultPoint;
  readonly highest: FaultPoint;
}

/** Steps off a break, to see both sides of a jump. */
const NUDGE = 1e-9;
const SAMPLES = 8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NARROWINGS = 16;

/** Where in the range, 0 lowest to 1 highest: every current is a straight line of it. */
type Share = number;
const along = (low: number, high: number, share: Share): number => low + (high - low) * share;

function fusesAt({ fuses }: FaultCase, share: Share): readonly FuseCurrent[] {
  return fuses.map(({ family, ratingA, atLowestA, atHighestA }) => ({
    family,
    ratingA,
    currentA: along(atLowestA, atHighestA, share),
  }));
}

const pointAt = (of: FaultCase, share: Share): FaultPoint =>
  faultAt(of.conductor, along(of.lowestA, of.highestA, share), fusesAt(of, share));

/** Where a falling function of the current passes a level within [from, to], by halving; null where it does not. */
function crossing(falls: (share: Share) => number, level: number): Share | null {
  let [from, to] = [0, 1];
  if (falls(from) <= level || falls(to) >= level) return null;
  for (let round = 0; round < 40; round += 1) {
    const middle = (from + to) / 2;
    if (falls(middle) > level) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Places where a line bends or jumps: the points of each band, the knees of the damage curve, and 5 s of the slowest. */
function breaks(of: FaultCase): Share[] {
  const { conductor, lowestA, highestA } = of;
  const damage = (share: Share) => damageSeconds(conductor, along(lowestA, highestA, share));
  const slowest = (share: Share) => pathTimes(fusesAt(of, share)).slowestS;
  const knees = [
    crossing(damage, SHORT_TIME_S * (1 + NUDGE)),
    crossing(damage, SHORT_TIME_S * (1 - NUDGE)),
    crossing(slowest, SHORT_TIME_S),
    (sustainedA(conductor) - lowestA) / (highestA - lowestA),
  ];
  const bends = of.fuses.flatMap((fuse) =>
    bandBreaksA(fuse)
      .flatMap((amps) => [amps, -amps])
      .map((amps) => (amps - fuse.atLowestA) / (fuse.atHighestA - fuse.atLowestA)),
  );
  const inside = [...knees, ...bends].filter((share): share is number => share !== null && share > 0 && share < 1);
  return inside.sort((one, other) => one - other);
}

type Objective = (share: Share) => number;

/** How far the slowest line leaves the insulation above its limit, K. */
function heatOf(of: FaultCase): Objective {
  const { conductor, lowestA, highestA } = of;
  return (share) => excessK(conductor, along(lowestA, highestA, share), pathTimes(fusesAt(of, share)).slowestS);
}

/** How much later than the damage even the fastest line opens, as a logarithm; above 0 the damage is certain. */
function surenessOf(of: FaultCase): Objective {
  const { conductor, lowestA, highestA } = of;
  return (share) => {
    const damageS = damageSeconds(conductor, along(lowestA, highestA, share));
    if (damageS === Number.POSITIVE_INFINITY) return Number.NEGATIVE_INFINITY;
    return Math.log(pathTimes(fusesAt(of, share)).fastestS) - Math.log(damageS);
  };
}

/** Where a function that rises and then falls is greatest: sampled, then narrowed round the best sample. */
function greatest(of: Objective, from: Share, to: Share): Share {
  const width = (to - from) / SAMPLES;
  let best = from;
  let most = Number.NEGATIVE_INFINITY;
  for (let sample = 0; sample <= SAMPLES; sample += 1) {
    const share = from + sample * width;
    const value = of(share);
    if (value > most) [best, most] = [share, value];
  }
  let low = Math.max(from, best - width);
  let high = Math.min(to, best + width);
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [atLeft, atRight] = [of(left), of(right)];
  for (let round = 0; round < NARROWINGS; round += 1) {
    if (atLeft > atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = of(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = of(right);
    }
  }
  const [found, value] = atLeft > atRight ? [left, atLeft] : [right, atRight];
  return value > most ? found : best;
}

/** In each piece between two breaks, where the objective is greatest; pieces that `skip` says cannot matter left out. */
function candidates(bounds: readonly Share[], of: Objective, skip: (from: Share, to: Share) => boolean): Share[] {
  return bounds.slice(1).flatMap((to, index) => {
    const from = bounds[index] ?? 0;
    return to - from < 10 * NUDGE || skip(from, to) ? [] : [greatest(of, from, to)];
  });
}

/** Whether the piece stays cooler than `excess` K above its limit: even its highest current for its longest time does. */
function staysBelow(of: FaultCase, excess: number): (from: Share, to: Share) => boolean {
  const rising = of.fuses.every(({ atLowestA, atHighestA }) => atLowestA >= 0 && atHighestA >= atLowestA);
  const limitC = overloadLimitC(of.conductor.insulationC);
  return (from, to) => {
    if (!rising) return false;
    const { slowestS } = pathTimes(fusesAt(of, from));
    const highestA = along(of.lowestA, of.highestA, to);
    const after = temperatureAfterC(of.conductor.thermal, highestA, slowestS, of.conductor);
    // A conductor that cools is hottest at the start.
    const hottestC = Math.max(after, of.conductor.startC);
    return hottestC - limitC < excess;
  };
}

const HARM_RANK = { none: 0, possible: 1, certain: 2 } as const;
const VERDICT_RANK = { opensInTime: 0, nothingOpens: 1, cannotBeTold: 2, damagedFirst: 3 } as const;

/** Which of two points is worse: by harm, then verdict, then how far the temperature stands above its limit. */
function isWorse(one: FaultPoint, other: FaultPoint): boolean {
  const byHarm = HARM_RANK[one.harm] - HARM_RANK[other.harm];
  if (byHarm !== 0) return byHarm > 0;
  const byVerdict = VERDICT_RANK[one.verdict] - VERDICT_RANK[other.verdict];
  if (byVerdict !== 0) return byVerdict > 0;
  const byHeat = one.clearingC - one.limitC - (other.clearingC - other.limitC);
  // Where both have melted, the one that gets there sooner.
  return byHeat !== 0 ? byHeat > 0 : one.damageS < other.damageS;
}

/**
 * Judges a short over its whole range of currents: the worst need not lie at an end, since a lower current leaves the
 * fuse more time. Currents in between are straight lines between the two ends, each fuse's own as well.
 * Throws RangeError where the lowest current exceeds the highest. Source: our rules, section 7.
 * 'awg:4', copper, 105 degC, 50 degC, SF51 of 125 A, 170 to 2000 A: worst 182 A, 703 s against 689 s: 'cannotBeTold'.
 */
export function judgeFault(of: FaultCase): FaultVerdict {
  if (!(of.lowestA <= of.highestA)) throw new RangeError(`fault: from ${of.lowestA} A to ${of.highestA} A`);
  const lowest = pointAt(of, 0);
  if (of.lowestA === of.highestA) return { worst: lowest, lowest, highest: lowest };
  const highest = pointAt(of, 1);
  const edges = breaks(of).flatMap((share) => [share * (1 - NUDGE), share, share + NUDGE * (1 - share)]);
  const bounds = [0, ...edges, 1];
  const worseAt = (worst: FaultPoint, share: Share): FaultPoint => {
    const point = pointAt(of, share);
    return isWorse(point, worst) ? point : worst;
  };
  let worst = bounds.reduce(worseAt, lowest);
  const hottest = candidates(bounds, heatOf(of), staysBelow(of, worst.clearingC - worst.limitC));
  worst = hottest.reduce(worseAt, worst);
  // Harm that is certain somewhere need not lie where the conductor gets hottest; without harm there is none to look for.
  if (worst.harm === 'possible') worst = candidates(bounds, surenessOf(of), () => false).reduce(worseAt, worst);
  return { worst, lowest, highest };
}
