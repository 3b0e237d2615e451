import { temperatureAfterC } from '../conductor/shortHeating.ts';
import { type FusePart, fastestAtS, slowestAtS } from '../fuse/timeCurrent.ts';
import type { SourceId } from '../sources.ts';
import { damageLimitC, damageLimitSource } from '../tables/adiabatic.ts';
import { fuseTimes, OPENING_MULTIPLE } from '../tables/fuseTimes.ts';
import { damageSeconds, type FaultConductor } from './damage.ts';

/** opensInTime: before the insulation is damaged, by the slowest line. nothingOpens: no fuse need open at this current. */
export type FaultVerdictId = 'opensInTime' | 'damagedFirst' | 'cannotBeTold' | 'nothingOpens';

/** Damage to the insulation: in no case that the standard admits, in some, in every one. */
export type Harm = 'none' | 'possible' | 'certain';

/** A fuse that clears the conductor when it opens, and the current through it, which may be another than the conductor's. */
export interface FuseCurrent extends FusePart {
  readonly currentA: number;
}

/** What a short of one current does to one conductor. Infinity stands for never. */
export interface FaultPoint {
  readonly currentA: number;
  readonly verdict: FaultVerdictId;
  readonly harm: Harm;
  /** The first fuse opens no sooner, s. 0 where a fuse without published times may open at any moment. */
  readonly fastestS: number;
  /** A fuse has opened by then, s. */
  readonly slowestS: number;
  /** The insulation is damaged then, s. */
  readonly damageS: number;
  /** Temperature when the slowest fuse opens, degC; what it settles at where none need open. The melting point if `melts`. */
  readonly clearingC: number;
  /** Temperature when the fastest fuse opens, degC. */
  readonly fastestC: number;
  /** The limit that `clearingC` is held against, degC. */
  readonly limitC: number;
  readonly limitSource: SourceId;
  readonly melts: boolean;
  /** The fuse that has opened by `slowestS`, by its place in the list; null: none. */
  readonly clearedBy: number | null;
  /** Fuses carrying more than their rating for which no times are published, by place. */
  readonly withoutBand: readonly number[];
  /** A time used lies beyond the last point that the standard gives. */
  readonly extrapolated: boolean;
  readonly sources: readonly SourceId[];
}

export interface PathTimes {
  readonly fastestS: number;
  readonly slowestS: number;
  readonly clearedBy: number | null;
  /** Every fuse carries less than the current at which it must open at last. */
  readonly noneNeedOpen: boolean;
}

/** Above its rating a fuse without published times may open at once, or never: nothing is taken for granted. */
const unknownFastestS = (multiple: number): number => (multiple > 1 ? 0 : Number.POSITIVE_INFINITY);

/** When fuses in series open, each at its own current, A: the first of them clears. */
export function pathTimes(fuses: readonly FusePart[], currentsA: ArrayLike<number>): PathTimes {
  let fastestS = Number.POSITIVE_INFINITY;
  let slowestS = Number.POSITIVE_INFINITY;
  let clearedBy: number | null = null;
  let noneNeedOpen = true;
  // counted by hand: a search asks this for hundreds of currents
  let place = 0;
  for (const { family, ratingA } of fuses) {
    const multiple = Math.abs(currentsA[place] ?? 0) / ratingA;
    const times = fuseTimes(family);
    fastestS = Math.min(fastestS, times === null ? unknownFastestS(multiple) : fastestAtS(times, multiple));
    const slowest = times === null ? Number.POSITIVE_INFINITY : slowestAtS(times, multiple);
    if (slowest < slowestS) {
      slowestS = slowest;
      clearedBy = place;
    }
    noneNeedOpen &&= multiple < OPENING_MULTIPLE;
    place += 1;
  }
  return { fastestS, slowestS, clearedBy, noneNeedOpen };
}

function harmOf(fastestS: number, slowestS: number, damageS: number): Harm {
  if (slowestS <= damageS) return 'none';
  return fastestS > damageS ? 'certain' : 'possible';
}

const VERDICT_OF: Readonly<Record<Harm, FaultVerdictId>> = {
  none: 'opensInTime',
  possible: 'cannotBeTold',
  certain: 'damagedFirst',
};

function verdictOf(times: PathTimes, harm: Harm): FaultVerdictId {
  if (times.noneNeedOpen) return 'nothingOpens';
  return times.slowestS === Number.POSITIVE_INFINITY ? 'cannotBeTold' : VERDICT_OF[harm];
}

function evidence(fuses: readonly FuseCurrent[]): Pick<FaultPoint, 'withoutBand' | 'extrapolated' | 'sources'> {
  const sources = new Set<SourceId>();
  let extrapolated = false;
  const withoutBand: number[] = [];
  for (const [place, { family, ratingA, currentA }] of fuses.entries()) {
    const times = fuseTimes(family);
    const multiple = Math.abs(currentA) / ratingA;
    if (times === null) {
      if (multiple > 1) withoutBand.push(place);
      continue;
    }
    for (const { source } of times.points) sources.add(source);
    extrapolated ||= multiple > Math.min(times.fastest.at(-1)?.multiple ?? 0, times.slowest.at(-1)?.multiple ?? 0);
  }
  return { withoutBand, extrapolated, sources: [...sources] };
}

/** What tells which of two currents does the worse. */
export type Standing = Pick<FaultPoint, 'verdict' | 'harm' | 'damageS' | 'clearingC' | 'limitC'>;

/** The part of `faultAt` that a search over many currents needs. */
export function standingAt(conductor: FaultConductor, currentA: number, times: PathTimes): Standing {
  const damageS = damageSeconds(conductor, currentA);
  const harm = harmOf(times.fastestS, times.slowestS, damageS);
  return {
    verdict: verdictOf(times, harm),
    harm,
    damageS,
    clearingC: temperatureAfterC(conductor.thermal, currentA, times.slowestS, conductor),
    limitC: damageLimitC(conductor.insulationC, times.slowestS),
  };
}

/**
 * What a short of one current does: verdict by the slowest line of the first fuse to open, 'certain' harm by the fastest.
 * Currents in A, any sign in a fuse; without fuses 'nothingOpens'. Good for any current >= 0.
 * Sources: `fuse/timeCurrent.ts`, `damage.ts`.
 * 'awg:4', copper, 105 degC, 50 degC, SF51 of 125 A, 1000 A: opens in 0.056 to 1 s, at 63 degC at most: 'opensInTime'.
 */
export function faultAt(conductor: FaultConductor, currentA: number, fuses: readonly FuseCurrent[]): FaultPoint {
  const times = pathTimes(
    fuses,
    fuses.map((fuse) => fuse.currentA),
  );
  const { fastestS, slowestS } = times;
  const standing = standingAt(conductor, currentA, times);
  return {
    currentA,
    ...standing,
    fastestS,
    slowestS,
    fastestC: temperatureAfterC(conductor.thermal, currentA, fastestS, conductor),
    limitSource: damageLimitSource(slowestS),
    melts: standing.clearingC >= conductor.thermal.meltingC,
    clearedBy: times.clearedBy,
    ...evidence(fuses),
  };
}
