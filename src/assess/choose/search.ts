/** Least metal that keeps every rule, over the sizes of all auto cables together. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import { searchBestFirst } from './bestFirst.ts';
import { searchDownwards, smallestAlike } from './downwards.ts';
import { type Found, groundsHold, openSizes, type Problem, sizesAt } from './problem.ts';
import { pickAlongTree, treeOfLots } from './treeSearch.ts';

/** Lots from which on a search through sets of sizes is not begun. */
const MOST_SEARCHED = 24;
/** Lots from which on even going down one lot at a time takes too long. */
const MOST_LOWERED = 60;
const MOST_TIGHTENED = 8;

/** The product of the sizes still open. */
export const combinations = (lots: Problem['lots']): number =>
  lots.reduce((product, lot) => product * openSizes(lot).length, 1);

/** A ground that a tree of its own would leave thinner than a feed is raised to it: not proven, but sound. */
function withGrounds({ lots, atLeast }: Problem, picks: readonly number[]): { picks: number[]; raised: boolean } {
  const held = [...picks];
  let raised = false;
  for (const pair of atLeast) {
    const { ground } = pair;
    const sizes = lots[ground]?.sizes.length ?? 0;
    while (!groundsHold({ lots, atLeast: [pair] }, held) && (held[ground] ?? 0) < sizes - 1) {
      held[ground] = (held[ground] ?? 0) + 1;
      raised = true;
    }
  }
  return { picks: held, raised };
}

/**
 * Along the tree of the lots, where they make one: the first set is of least metal when the rules accept it. If they do
 * not, budgets are lowered by as much as the true drops exceed the least ones, and sizes at fault ruled out, a few times.
 */
function searchTree(problem: Problem, rounds: number): Found | null {
  const { lots, trial } = problem;
  let budgetV = [...problem.budgetV];
  const ruledOut = lots.map(({ breaks }) => [...breaks]);
  for (let round = 0; round < rounds; round += 1) {
    const open = lots.map((lot, index) => ({ ...lot, breaks: ruledOut[index] ?? [] }));
    const tree = treeOfLots(open, budgetV);
    const picked = tree === null ? null : pickAlongTree(open, tree);
    if (picked === null) return null;
    const { picks, raised } = withGrounds(problem, picked.picks);
    const sizes = sizesAt(lots, picks);
    const { accepted, overV, atFault } = trial(sizes);
    if (accepted) return { sizes, proven: round === 0 && picked.exact && !raised };
    budgetV = budgetV.map((budget, load) => budget - (overV.get(load) ?? 0) * (1 + round / 4));
    for (const [lot, criterion] of atFault) {
      const breaks = ruledOut[lot];
      const pick = picks[lot] ?? -1;
      if (breaks !== undefined && pick >= 0) breaks[pick] = criterion;
    }
  }
  return null;
}

/**
 * One size for each lot, of least metal, that the rule book accepts; the largest of each must be acceptable. Where lots
 * branch like a tree the first set found along it is mostly accepted, and is then of least metal; else sets are tried
 * by ever dearer bounds while trials last. What is found in any other way is good, and not called proven.
 */
export function searchSizes(problem: Problem): Found {
  const { lots, trial } = problem;
  const first = searchTree(problem, 1);
  if (first?.proven === true) return first;
  const best: readonly GaugeId[] | null = lots.length > MOST_SEARCHED ? null : searchBestFirst(problem);
  if (best !== null) return { sizes: best, proven: true };
  const tightened = first ?? searchTree(problem, MOST_TIGHTENED);
  if (tightened !== null) return tightened;
  if (lots.length <= MOST_LOWERED) return { sizes: searchDownwards(problem), proven: false };
  const alike = smallestAlike({ lots, trial });
  return { sizes: lots.flatMap(({ sizes }) => sizes[alike] ?? sizes.at(-1) ?? []), proven: false };
}
