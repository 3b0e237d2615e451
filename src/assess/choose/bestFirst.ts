/** Least metal by best first: exact, because no bound is above what it bounds. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import { exceeds } from '../conductor.ts';
import type { LotSizes } from './bounds.ts';
import { groundsHold, openSizes, type Problem, sizesAt } from './problem.ts';

interface State {
  /** Index of a size for each lot decided so far, in the order of the search. */
  readonly picks: readonly number[];
  readonly cost: number;
  /** Cost with the least that the rest can cost. */
  readonly bound: number;
  /** By load: what the lots still open may lose, V. */
  readonly leftV: readonly number[];
}

interface Point {
  readonly cost: number;
  readonly dropV: number;
}

const MOST_STATES = 20_000;

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
    const sizes = openSizes(lot);
    const fronts = [...(this.#fronts.at(-1) ?? [])];
    const dropV = [...(this.#sharedDropV.at(-1) ?? [])];
    let cost = this.#sharedCost.at(-1) ?? 0;
    const only = onlyLoadOf(lot);
    if (only !== null) {
      const points = (fronts[only] ?? []).flatMap((point) =>
        sizes.map((size) => ({
          cost: point.cost + (lot.cost[size] ?? 0),
          dropV: point.dropV + (lot.parts[0]?.dropV[size] ?? 0),
        })),
      );
      fronts[only] = front(points);
    } else {
      cost += Math.min(...sizes.map((size) => lot.cost[size] ?? 0));
      for (const part of lot.parts) {
        const leastV = Math.min(...sizes.map((size) => part.dropV[size] ?? 0));
        for (const load of part.loads) dropV[load] = (dropV[load] ?? 0) + leastV;
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

/** The one load that a lot serves; null where it serves more, or its current has a choice of way. */
function onlyLoadOf({ parts }: LotSizes): number | null {
  const [part, ...others] = parts;
  return part !== undefined && others.length === 0 && part.loads.length === 1 ? (part.loads[0] ?? null) : null;
}

/**
 * Lots that several amplifiers share come first: what is left then falls apart into one small choice for each amplifier,
 * whose cheapest cost for any drop left is known beforehand, so that hardly a set is tried in vain.
 */
function orderOf(lots: readonly LotSizes[]): number[] {
  const only = lots.map(onlyLoadOf);
  const most = (index: number): number => lots[index]?.cost.at(-1) ?? 0;
  return [...lots.keys()].sort(
    (one, other) =>
      Number(only[one] !== null) - Number(only[other] !== null) ||
      (only[one] ?? -1) - (only[other] ?? -1) ||
      most(other) - most(one) ||
      one - other,
  );
}

/** The cheapest set that the rules accept, by ever dearer bounds; null where trials or states run out. */
export function searchBestFirst(problem: Problem): GaugeId[] | null {
  const { lots, budgetV, trial, mostTrials } = problem;
  if (mostTrials === 0) return null;
  const order = orderOf(lots);
  const ordered = order.flatMap((index) => lots[index] ?? []);
  const rest = new Rest(ordered, budgetV.length);
  const byLot = (picks: readonly number[]): number[] => {
    const found: number[] = [];
    for (const [place, pick] of picks.entries()) found[order[place] ?? -1] = pick;
    return found;
  };

  const queue: State[] = [{ picks: [], cost: 0, bound: 0, leftV: budgetV }];
  let trials = 0;
  for (let count = 0; count < MOST_STATES; count += 1) {
    const state = queue.pop();
    if (state === undefined) return null;
    const lot = ordered[state.picks.length];
    if (lot === undefined) {
      const sizes = sizesAt(lots, byLot(state.picks));
      if (trial(sizes).accepted) return sizes;
      trials += 1;
      if (trials >= mostTrials) return null;
      continue;
    }
    for (const size of openSizes(lot)) {
      const picks = [...state.picks, size];
      if (!groundsHold(problem, byLot(picks))) continue;
      const cost = state.cost + (lot.cost[size] ?? 0);
      const leftV = [...state.leftV];
      for (const { loads, dropV } of lot.parts) {
        for (const load of loads) leftV[load] = (leftV[load] ?? Infinity) - (dropV[size] ?? 0);
      }
      const bound = cost + rest.leastCost(picks.length, leftV);
      if (bound < Infinity) insert(queue, { picks, cost, bound, leftV });
    }
  }
  return null;
}
