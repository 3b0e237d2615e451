/** A good set of sizes where no proof is to be had. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import { type Problem, sizesAt } from './problem.ts';

/** The smallest place in the list of sizes that every lot can take together; the largest one is taken to do. */
export function smallestAlike({ lots, trial }: Pick<Problem, 'lots' | 'trial'>): number {
  let [fails, does] = [-1, Math.max(...lots.map(({ sizes }) => sizes.length)) - 1];
  while (does - fails > 1) {
    const middle = (fails + does) >> 1;
    if (trial(lots.flatMap(({ sizes }) => sizes[middle] ?? sizes.at(-1) ?? [])).accepted) does = middle;
    else fails = middle;
  }
  return does;
}

/**
 * From the smallest size that will do everywhere, down one lot and one size at a time as long as the rules hold, where
 * that saves most: good, but not proven to be the least.
 */
export function searchDownwards(problem: Problem): GaugeId[] {
  const { lots, trial } = problem;
  const alike = smallestAlike(problem);
  const picks = lots.map(({ sizes }) => Math.min(alike, sizes.length - 1));
  const sizesOf = (): GaugeId[] => sizesAt(lots, picks);
  const saving = (index: number): number => {
    const { cost } = lots[index] ?? { cost: [] };
    const pick = picks[index] ?? 0;
    return (cost[pick] ?? 0) - (cost[pick - 1] ?? Infinity);
  };
  const stuck = new Set<number>();
  while (stuck.size < lots.length) {
    const [next] = [...lots.keys()]
      .filter((index) => !stuck.has(index))
      .sort((one, other) => saving(other) - saving(one) || one - other);
    if (next === undefined) break;
    const pick = picks[next] ?? 0;
    if (pick === 0 || lots[next]?.breaks[pick - 1] != null) {
      stuck.add(next);
      continue;
    }
    picks[next] = pick - 1;
    if (trial(sizesOf()).accepted) continue;
    picks[next] = pick;
    stuck.add(next);
  }
  return sizesOf();
}
