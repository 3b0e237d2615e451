import type { SourceId } from '../sources.ts';
import { fuseTimes } from '../tables/fuseTimes.ts';
import { bandBreaksA, type FusePart, fastestAtS, slowestAtS } from './timeCurrent.ts';

export interface Selectivity {
  /** At every current of the range the branch has opened before the main may. */
  readonly shown: boolean;
  /** Where the branch comes nearest to outlasting the main, or outlasts it most, A. */
  readonly worstA: number;
  /** The branch has opened by then, s; Infinity: it need not open there. */
  readonly branchSlowestS: number;
  /** The main opens no sooner, s; Infinity: it carries on there. */
  readonly mainFastestS: number;
  /** A time used lies beyond the last point: the branch's slowest held, the main's fastest at constant I2t. */
  readonly extrapolated: boolean;
  readonly sources: readonly SourceId[];
}

/** A hair past a break. */
const NUDGE = 1e-9;

/**
 * Whether a branch fuse is sure to open before the main one, by the limits of their standards alone: the slowest branch
 * against the fastest main, over every current from `fromA` to `toA` that both carry. Null: for one of them no times are
 * published. Between two breaks both lines are straight on a log-log chart, so the worst lies at a break or an end.
 * Good for 0 < fromA <= toA. Source: our rules, section 5; ISO 8820 limits.
 * Type C of 10 A behind SF51 of 500 A, to 600 A: shown, worst 600 A: 0.1 s against 152 s.
 */
export function selectivity(branch: FusePart, main: FusePart, fromA: number, toA: number): Selectivity | null {
  const [branchTimes, mainTimes] = [fuseTimes(branch.family), fuseTimes(main.family)];
  if (branchTimes === null || mainTimes === null) return null;
  const branchAtS = (amps: number): number => slowestAtS(branchTimes, amps / branch.ratingA);
  const mainAtS = (amps: number): number => fastestAtS(mainTimes, amps / main.ratingA);
  const ratioAt = (amps: number): number => {
    const mainS = mainAtS(amps);
    // A main that carries on there outlasts any branch.
    return mainS === Number.POSITIVE_INFINITY ? mainS : mainS / branchAtS(amps);
  };
  let worstA = toA;
  let least = ratioAt(toA);
  const hold = (amps: number): void => {
    if (amps < fromA || amps > toA) return;
    const ratio = ratioAt(amps);
    if (ratio < least) [worstA, least] = [amps, ratio];
  };
  hold(fromA);
  for (const part of [branch, main]) {
    for (const amps of bandBreaksA(part)) {
      hold(amps);
      // The main's line falls at once past each of its points.
      hold(amps * (1 + NUDGE));
    }
  }
  const branchEnd = branchTimes.slowest.at(-1)?.multiple ?? 0;
  const mainEnd = mainTimes.fastest.at(-1)?.multiple ?? 0;
  return {
    shown: least > 1,
    worstA,
    branchSlowestS: branchAtS(worstA),
    mainFastestS: mainAtS(worstA),
    extrapolated: worstA > branchEnd * branch.ratingA || worstA > mainEnd * main.ratingA,
    sources: [...new Set([...branchTimes.points, ...mainTimes.points].map(({ source }) => source))],
  };
}
