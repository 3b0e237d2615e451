import { currentReachingA, temperatureAfterC } from '../conductor/shortHeating.ts';
import { bandBreaksA, type FusePart, slowestWithinA } from '../fuse/timeCurrent.ts';
import { overloadLimitC, SHORT_TIME_S, shortLimitC } from '../tables/adiabatic.ts';
import { damageSeconds, excessK, type FaultConductor, sustainedA } from './damage.ts';
import { type FaultPoint, faultAt, type PathTimes, pathTimes, type Standing, standingAt } from './point.ts';

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

/** Steps off a break, to see both sides of a jump. */
const NUDGE = 1e-9;
const SAMPLES = 8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NARROWINGS = 16;

/** Where in the range, 0 lowest to 1 highest: every current is a straight line of it. */
type Share = number;
const along = (low: number, high: number, share: Share): number => low + (high - low) * share;

/** One case at any share of its range: what the search asks again and again, with nothing made anew for each. */
class Sweep {
  readonly #of: FaultCase;
  readonly #currentsA: Float64Array;

  constructor(of: FaultCase) {
    this.#of = of;
    this.#currentsA = new Float64Array(of.fuses.length);
  }

  currentA(share: Share): number {
    return along(this.#of.lowestA, this.#of.highestA, share);
  }

  times(share: Share): PathTimes {
    const { fuses } = this.#of;
    let place = 0;
    for (const { atLowestA, atHighestA } of fuses) {
      this.#currentsA[place] = along(atLowestA, atHighestA, share);
      place += 1;
    }
    return pathTimes(fuses, this.#currentsA);
  }

  standing(share: Share): Standing {
    return standingAt(this.#of.conductor, this.currentA(share), this.times(share));
  }

  point(share: Share): FaultPoint {
    const fuses = this.#of.fuses.map(({ family, ratingA, atLowestA, atHighestA }) => ({
      family,
      ratingA,
      currentA: along(atLowestA, atHighestA, share),
    }));
    return faultAt(this.#of.conductor, this.currentA(share), fuses);
  }
}

/** Currents of the conductor at which the time to damage leaves the level at 5 s, either way, and at which it ends, A. */
function kneesA(conductor: FaultConductor): number[] {
  const { thermal, insulationC } = conductor;
  const within = (limitC: number): number => currentReachingA(thermal, SHORT_TIME_S, limitC, conductor);
  return [within(shortLimitC(insulationC)), within(overloadLimitC(insulationC)), sustainedA(conductor)];
}

/** Currents of a fuse at which a line of its band bends or jumps, or its slowest comes down to 5 s, A. */
function bendsA(fuse: FaultFuse): readonly number[] {
  const within = slowestWithinA(fuse, SHORT_TIME_S);
  return within === null ? bandBreaksA(fuse) : [...bandBreaksA(fuse), within];
}

/** Places where a line bends or jumps: the points of each band, the knees of the damage curve, and 5 s of the slowest. */
function breaks({ conductor, lowestA, highestA, fuses }: FaultCase): Share[] {
  const shares: Share[] = [];
  const add = (amps: number, lowA: number, highA: number): void => {
    const share = (amps - lowA) / (highA - lowA);
    if (share > 0 && share < 1) shares.push(share);
  };
  for (const amps of kneesA(conductor)) add(amps, lowestA, highestA);
  for (const fuse of fuses) {
    const { atLowestA, atHighestA } = fuse;
    // it may carry its current either way
    for (const amps of bendsA(fuse)) {
      add(amps, atLowestA, atHighestA);
      add(-amps, atLowestA, atHighestA);
    }
  }
  return shares.sort((one, other) => one - other);
}

type Objective = (share: Share) => number;

/** How far the slowest line leaves the insulation above its limit, K. */
const heatOf =
  ({ conductor }: FaultCase, sweep: Sweep): Objective =>
  (share) =>
    excessK(conductor, sweep.currentA(share), sweep.times(share).slowestS);

/** How much later than the damage even the fastest line opens, as a logarithm; above 0 the damage is certain. */
const surenessOf =
  ({ conductor }: FaultCase, sweep: Sweep): Objective =>
  (share) => {
    const damageS = damageSeconds(conductor, sweep.currentA(share));
    if (damageS === Number.POSITIVE_INFINITY) return Number.NEGATIVE_INFINITY;
    return Math.log(sweep.times(share).fastestS) - Math.log(damageS);
  };

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
function staysBelow(of: FaultCase, sweep: Sweep, excess: number): (from: Share, to: Share) => boolean {
  const rising = of.fuses.every(({ atLowestA, atHighestA }) => atLowestA >= 0 && atHighestA >= atLowestA);
  const limitC = overloadLimitC(of.conductor.insulationC);
  return (from, to) => {
    if (!rising) return false;
    const { slowestS } = sweep.times(from);
    // for the same time, as beyond a standard's last point, the highest current is the hottest: an end, judged already
    if (slowestS === sweep.times(to).slowestS) return true;
    const after = temperatureAfterC(of.conductor.thermal, sweep.currentA(to), slowestS, of.conductor);
    // A conductor that cools is hottest at the start.
    const hottestC = Math.max(after, of.conductor.startC);
    return hottestC - limitC < excess;
  };
}

const HARM_RANK = { none: 0, possible: 1, certain: 2 } as const;
const VERDICT_RANK = { opensInTime: 0, nothingOpens: 1, cannotBeTold: 2, damagedFirst: 3 } as const;

/** Which of two currents is worse: by harm, then verdict, then how far the temperature stands above its limit. */
function isWorse(one: Standing, other: Standing): boolean {
  const byHarm = HARM_RANK[one.harm] - HARM_RANK[other.harm];
  if (byHarm !== 0) return byHarm > 0;
  const byVerdict = VERDICT_RANK[one.verdict] - VERDICT_RANK[other.verdict];
  if (byVerdict !== 0) return byVerdict > 0;
  const byHeat = one.clearingC - one.limitC - (other.clearingC - other.limitC);
  // Where both have melted, the one that gets there sooner.
  return byHeat !== 0 ? byHeat > 0 : one.damageS < other.damageS;
}

/**
 * Judges a short over its whole range of currents, by the worst of them, which need not lie at an end: a lower
 * current leaves the fuse more time. Currents in between are straight lines between the two ends, each fuse's own as well.
 * Throws RangeError where the lowest current exceeds the highest. Source: our rules, section 7.
 * 'awg:4', copper, 105 degC, 50 degC, SF51 of 125 A, 170 to 2000 A: worst 182 A, 703 s against 689 s: 'cannotBeTold'.
 */
export function judgeFault(of: FaultCase): FaultPoint {
  if (!(of.lowestA <= of.highestA)) throw new RangeError(`fault: from ${of.lowestA} A to ${of.highestA} A`);
  const sweep = new Sweep(of);
  if (of.lowestA === of.highestA) return sweep.point(0);
  const bounds: Share[] = [0];
  for (const share of breaks(of)) bounds.push(share * (1 - NUDGE), share, share + NUDGE * (1 - share));
  bounds.push(1);
  let worst = 0;
  let standing = sweep.standing(0);
  const hold = (shares: readonly Share[]): void => {
    for (const share of shares) {
      const other = sweep.standing(share);
      if (isWorse(other, standing)) [worst, standing] = [share, other];
    }
  };
  hold(bounds);
  hold(candidates(bounds, heatOf(of, sweep), staysBelow(of, sweep, standing.clearingC - standing.limitC)));
  // Harm that is certain somewhere need not lie where the conductor gets hottest; without harm there is none to look for.
  if (standing.harm === 'possible') hold(candidates(bounds, surenessOf(of, sweep), () => false));
  return sweep.point(worst);
}
