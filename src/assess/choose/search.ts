/** Least metal that keeps every rule: best first over the sizes of all auto cables together. */
import { type GaugeId, gauge } from '../../calc/conductor/gauge.ts';
import { exceeds } from '../conductor.ts';
import type { LotSizes } from './bounds.ts';

/** A ground may not be smaller than a feed; either is a searched lot, or the area of a cable that is decided. */
export interface AtLeast {
  readonly ground: number;
  readonly feed: number | { readonly areaMm2: number };
}

export interface Problem {
  readonly lots: readonly LotSizes[];
  /** By load: what the least drop of the searched cables may reach, V; Infinity where nothing is asked. */
  readonly budgetV: readonly number[];
  readonly atLeast: readonly AtLeast[];
  /** The whole rule book on one set of sizes: one size for each lot. */
  readonly accepts: (sizes: readonly GaugeId[]) => boolean;
  /** Sets of sizes it may be asked about. */
  readonly mostTrials: number;
}

export interface Found {
  readonly sizes: readonly GaugeId[];
  /** Every cheaper set was ruled out. */
  readonly proven: boolean;
}

interface State {
  /** Index of a size for each lot decided so far, in the order of the search. */
  readonly picks: readonly number[];
  readonly cost: number;
  /** Cost with the least that the rest can cost. */
  readonly bound: number;
}

interface Point {
  readonly cost: number;
  readonly dropV: number;
}

const MOST_STATES = 20_000;

/** The loads whose way a lot lies on. */
const loadsOf = ({ dropV }: LotSizes): number[] => [
  ...new Set(dropV.flatMap((drops) => drops.flatMap((drop, load) => (drop > 0 ? [load] : [])))),
];

/** Sizes not yet ruled out, as indices. */
const open = ({ breaks }: LotSizes): number[] => [...breaks.keys()].filter((size) => breaks[size] === null);

/** Of a list of points, those that no other undercuts in both cost and drop; ascending in cost. */
function front(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of [...points].sort((one, other) => one.cost - other.cost || one.dropV - other.dropV)) {
    if (point.dropV < (kept.at(-1)?.dropV ?? Infinity)) kept.push(point);
  }
  return kept;
}

/** By place in the order: the least cost and drop of the lots from there on. */
class Rest {
  readonly #sharedCost: number[];
  readonly #sharedDropV: number[][];
  readonly #fronts: (readonly Point[])[][];

  constructor(order: readonly LotSizes[], loads: number) {
    this.#sharedCost = [0];
    this.#sharedDropV = [Array.from({ length: loads }, () => 0)];
    this.#fronts = [Array.from({ length: loads }, () => [{ cost: 0, dropV: 0 }])];
    for (const lot of [...order].reverse()) this.#before(lot);
    this.#sharedCost.reverse();
    this.#sharedDropV.reverse();
    this.#fronts.reverse();
  }

  #before(lot: LotSizes): void {
    const sizes = open(lot);
    const on = loadsOf(lot);
    const fronts = [...(this.#fronts.at(-1) ?? [])];
    const dropV = [...(this.#sharedDropV.at(-1) ?? [])];
    let cost = this.#sharedCost.at(-1) ?? 0;
    const [only] = on;
    if (on.length === 1 && only !== undefined) {
      const points = (fronts[only] ?? []).flatMap((point) =>
        sizes.map((size) => ({
          cost: point.cost + (lot.cost[size] ?? 0),
          dropV: point.dropV + (lot.dropV[size]?.[only] ?? 0),
        })),
      );
      fronts[only] = front(points);
    } else {
      cost += Math.min(...sizes.map((size) => lot.cost[size] ?? 0));
      for (const load of on) {
        dropV[load] = (dropV[load] ?? 0) + Math.min(...sizes.map((size) => lot.dropV[size]?.[load] ?? 0));
      }
    }
    this.#sharedCost.push(cost);
    this.#sharedDropV.push(dropV);
    this.#fronts.push(fronts);
  }

  /** Least cost of the lots from `at` on, with that much drop left for each load; Infinity when it is too little. */
  leastCost(at: number, leftV: readonly number[]): number {
    let cost = this.#sharedCost[at] ?? 0;
    for (const [load, points] of (this.#fronts[at] ?? []).entries()) {
      const left = (leftV[load] ?? Infinity) - (this.#sharedDropV[at]?.[load] ?? 0);
      const within = points.find(({ dropV }) => !exceeds(dropV, left));
      if (within === undefined) return Infinity;
      cost += within.cost;
    }
    return cost;
  }
}

/** Cheapest first; of equally cheap ones the smaller sizes, so that the answer does not hang on the order of the file. */
function comesBefore(one: State, other: State): boolean {
  if (one.bound !== other.bound) return one.bound < other.bound;
  if (one.picks.length !== other.picks.length) return one.picks.length > other.picks.length;
  const sum = ({ picks }: State): number => picks.reduce((total, pick) => total + pick, 0);
  return sum(one) < sum(other);
}

function insert(queue: State[], state: State): void {
  // worst first, so that the best is taken from the end
  let [low, high] = [0, queue.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const held = queue[middle];
    if (held !== undefined && comesBefore(state, held)) low = middle + 1;
    else high = middle;
  }
  queue.splice(low, 0, state);
}

function searchBestFirst(
  { lots, budgetV, atLeast, accepts, mostTrials }: Problem,
  order: readonly number[],
): GaugeId[] | null {
  const ordered = order.flatMap((index) => lots[index] ?? []);
  const rest = new Rest(ordered, budgetV.length);
  const placeOf = new Map(order.map((lot, place) => [lot, place]));
  const sizesOf = (picks: readonly number[]): GaugeId[] =>
    lots.flatMap((lot, index) => lot.sizes[picks[placeOf.get(index) ?? -1] ?? -1] ?? []);
  const areaAt = (picks: readonly number[], lot: number): number | null => {
    const place = placeOf.get(lot) ?? -1;
    const size = ordered[place]?.sizes[picks[place] ?? -1];
    return size === undefined ? null : gauge(size).areaMm2;
  };
  const groundsHold = (picks: readonly number[]): boolean =>
    atLeast.every(({ ground, feed }) => {
      const groundMm2 = areaAt(picks, ground);
      const feedMm2 = typeof feed === 'number' ? areaAt(picks, feed) : feed.areaMm2;
      return groundMm2 === null || feedMm2 === null || !exceeds(feedMm2, groundMm2);
    });

  const queue: State[] = [{ picks: [], cost: 0, bound: 0 }];
  let trials = 0;
  for (let count = 0; count < MOST_STATES; count += 1) {
    const state = queue.pop();
    if (state === undefined) return null;
    const lot = ordered[state.picks.length];
    if (lot === undefined) {
      if (accepts(sizesOf(state.picks))) return sizesOf(state.picks);
      trials += 1;
      if (trials >= mostTrials) return null;
      continue;
    }
    for (const size of open(lot)) {
      const picks = [...state.picks, size];
      if (!groundsHold(picks)) continue;
      const cost = state.cost + (lot.cost[size] ?? 0);
      const leftV = budgetV.map((budget, load) =>
        picks.reduce((left, pick, place) => left - (ordered[place]?.dropV[pick]?.[load] ?? 0), budget),
      );
      const bound = cost + rest.leastCost(picks.length, leftV);
      if (bound < Infinity) insert(queue, { picks, cost, bound });
    }
  }
  return null;
}

/** The smallest place in the list of sizes that every lot can take together; the largest one is taken to do. */
function smallestAlike({ lots, accepts }: Problem): number {
  let [fails, does] = [-1, Math.max(...lots.map(({ sizes }) => sizes.length)) - 1];
  while (does - fails > 1) {
    const middle = (fails + does) >> 1;
    if (accepts(lots.flatMap(({ sizes }) => sizes[middle] ?? sizes.at(-1) ?? []))) does = middle;
    else fails = middle;
  }
  return does;
}

/**
 * From the smallest size that will do everywhere, down one lot and one size at a time as long as the rules hold, where
 * that saves most: good, but not proven to be the least.
 */
function searchDownwards(problem: Problem): GaugeId[] {
  const { lots, accepts } = problem;
  const alike = smallestAlike(problem);
  const picks = lots.map(({ sizes }) => Math.min(alike, sizes.length - 1));
  const sizesOf = (): GaugeId[] => lots.flatMap((lot, index) => lot.sizes[picks[index] ?? -1] ?? []);
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
    if (accepts(sizesOf())) continue;
    picks[next] = pick;
    stuck.add(next);
  }
  return sizesOf();
}

/**
 * One size for each lot, of least metal, that the rule book accepts; the largest of each must be acceptable. Groups
 * that several amplifiers share come first: what is left then falls apart into one small choice for each amplifier,
 * whose cheapest cost for any drop left is known beforehand, so that hardly a set is tried in vain. Exact, because
 * no bound is above what it bounds; where the trials run out it goes down from the largest sizes and says so.
 */
export function searchSizes(problem: Problem): Found {
  const { lots } = problem;
  const loads = lots.map(loadsOf);
  const order = [...lots.keys()].sort((one, other) => {
    const shared = (index: number): number => ((loads[index]?.length ?? 0) === 1 ? 1 : 0);
    const first = (index: number): number => loads[index]?.[0] ?? -1;
    const most = (index: number): number => lots[index]?.cost.at(-1) ?? 0;
    return shared(one) - shared(other) || first(one) - first(other) || most(other) - most(one) || one - other;
  });
  const best = searchBestFirst(problem, order);
  return best === null ? { sizes: searchDownwards(problem), proven: false } : { sizes: best, proven: true };
}
