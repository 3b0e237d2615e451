/** Sizes for all auto cables together, or which of them have none, and what binds. */

import { type GaugeId, gauge, isGaugeId } from '../../calc/conductor/gauge.ts';
import { fixedGauge } from '../capacity.ts';
import { ANY_SIZE } from '../conductor.ts';
import { groundPairs } from '../grounds.ts';
import type { Model } from '../model.ts';
import type { StatePoint } from '../operate.ts';
import { decidingStates, type Source, statesOf } from '../states.ts';
import { searchBestFirst } from './bestFirst.ts';
import { type LeastFigures, type LotSizes, leastDropV, leastFigures, lotSizes } from './bounds.ts';
import { type LotChoice, Neighbours } from './describe.ts';
import { type Failing, findFailing, type Judge, judgeOf, outcomeOf } from './judge.ts';
import { lotsOf } from './lots.ts';
import type { AtLeast, Problem } from './problem.ts';
import { combinations, searchSizes } from './search.ts';
import { type Criterion, dropLimitV, type Trial, tryOut } from './trial.ts';

export interface Choice {
  /** By cable: the size that counts; null where none is chosen or needed. */
  readonly sizes: readonly (GaugeId | null)[];
  /** By cable: sizes to work the circuit with: as chosen, or the largest in stock where none qualifies. */
  readonly trialSizes: readonly GaugeId[];
  readonly lots: readonly LotChoice[];
  /** Cables for which no size in stock will do, lot by lot, and the rule that binds at the largest. */
  readonly failing: readonly { readonly cables: readonly number[]; readonly binds: Criterion }[];
  /** Loads on the way of a failing cable: nothing about them is told. */
  readonly unknownLoads: ReadonlySet<number>;
  readonly proven: boolean;
  /** Worked in every state; null where currents cannot be told. */
  readonly trial: Trial | null;
}

/** Sets of sizes tried before the search gives up its proof. */
const MOST_TRIALS = 400;
/**
 * Where current has a choice of way no size rules another out, and bounds are poor: there every set is tried that is not
 * dearer than the one found, but only where there are no more of them than this.
 */
const MOST_SETS = 512;

const mostTrials = ({ ways }: Model, lots: readonly LotSizes[]): number => {
  if (ways.radial) return MOST_TRIALS;
  return combinations(lots) <= MOST_SETS ? MOST_SETS : 0;
};

const ascending = (sizes: Iterable<GaugeId>): GaugeId[] =>
  [...new Set(sizes)].sort((one, other) => gauge(one).areaMm2 - gauge(other).areaMm2 || one.localeCompare(other));

/** Sizes the shop stocks, ascending in area. */
export const stockOf = ({ settings }: Pick<Model, 'settings'>): GaugeId[] =>
  ascending(settings.stock.filter(isGaugeId));

/** By load: what the least drop of the chosen cables may reach: the limit less what cables fixed by hand lose at least, V. */
function budgetsV(
  model: Model,
  least: LeastFigures,
  { unknown, relaxed }: Pick<Judge, 'unknown' | 'relaxed'>,
): number[] {
  const budgets = model.demands.map((demand, load) =>
    demand === null || unknown.has(load) ? Infinity : dropLimitV(model),
  );
  for (const [index, cable] of model.circuit.cables.entries()) {
    const size = fixedGauge(cable);
    const dropV = size === null ? 0 : leastDropV(model, index, size, least);
    if (dropV === 0) continue;
    for (const load of model.ways.behindOf(index) ?? []) {
      if (!relaxed.has(load)) budgets[load] = (budgets[load] ?? 0) - dropV;
    }
  }
  return budgets;
}

function groundsAtLeast(model: Model, lots: readonly LotSizes[], sizes: readonly GaugeId[]): AtLeast[] {
  const lotOf = new Map(lots.flatMap(({ cables }, lot) => cables.map((cable) => [cable, lot] as const)));
  return groundPairs(model).flatMap(({ ground, feed }): AtLeast[] => {
    const lot = lotOf.get(ground);
    const size = sizes[feed];
    if (lot === undefined || size === undefined) return [];
    const materialOf = (cable: number) => model.circuit.cables[cable]?.conductor.material.value ?? 'copper';
    const materials = { groundMaterial: materialOf(ground), feedMaterial: materialOf(feed) };
    return [{ ground: lot, feed: lotOf.get(feed) ?? size, ...materials }];
  });
}

/** `base` with one size for each lot. */
function withSizes(base: readonly GaugeId[], lots: readonly LotSizes[], chosen: readonly GaugeId[]): GaugeId[] {
  const sizes = [...base];
  for (const [lot, { cables }] of lots.entries()) {
    const size = chosen[lot];
    if (size !== undefined) for (const cable of cables) sizes[cable] = size;
  }
  return sizes;
}

/** Nothing to choose: every cable that carries current has its size. */
function asFixed(model: Model, trialSizes: readonly GaugeId[]): Choice {
  return {
    sizes: model.circuit.cables.map(fixedGauge),
    trialSizes,
    lots: [],
    failing: [],
    unknownLoads: new Set(),
    proven: true,
    trial: tryOut(model, trialSizes),
  };
}

/** Sizes with some states worked while they are tried; null when what is chosen then fails in another. */
function chooseIn(
  model: Model,
  stock: readonly GaugeId[],
  largestSize: GaugeId,
  states: readonly Source[],
): Choice | null {
  const { circuit } = model;
  const largest = circuit.cables.map((cable) => fixedGauge(cable) ?? largestSize);
  const auto = lotsOf(model);
  if (auto.length === 0) return asFixed(model, largest);
  const least = leastFigures(model, largest);
  const trials = new Map<string, Trial>();
  let near: readonly StatePoint[] = [];
  const tryOnce = (sizes: readonly GaugeId[]): Trial => {
    const key = sizes.join();
    const before = trials.get(key);
    if (before !== undefined) return before;
    const trial = tryOut(model, sizes, { states, leastA: least.amps, near });
    if (trial.operating.ok) near = trial.operating.states;
    trials.set(key, trial);
    return trial;
  };

  const all = auto.map((lot) => lotSizes(model, lot, stock, least));
  const setUp = (found: Failing) => {
    const lots = all.filter(({ loads }) => !loads.some((load) => found.unknown.has(load)));
    const judge = judgeOf(model, lots, found);
    const outcome = outcomeOf(model, lots, judge);
    const problem: Problem = {
      lots,
      budgetV: budgetsV(model, least, judge),
      atLeast: groundsAtLeast(model, lots, largest),
      trial: (sizes) => outcome(tryOnce(withSizes(largest, lots, sizes))),
      mostTrials: mostTrials(model, lots),
    };
    return { found, lots, judge, problem };
  };
  const atLargest = tryOnce(largest);
  const usual = setUp(findFailing(model, all, atLargest));
  // where current has a choice of way, what fails at the largest sizes may hold at others
  const hopeful =
    model.ways.radial || usual.found.failing.length === 0
      ? null
      : setUp(findFailing(model, all, { ...atLargest, breaches: [] }));
  const hoped = hopeful === null || hopeful.found.failing.length > 0 ? null : searchBestFirst(hopeful.problem);
  const { found, lots, judge, problem } = hopeful !== null && hoped !== null ? hopeful : usual;
  const { budgetV } = problem;
  const { sizes: picked, proven } = hoped === null ? searchSizes(problem) : { sizes: hoped, proven: true };
  const trialSizes = withSizes(largest, lots, picked);
  const trial = tryOut(model, trialSizes, { leastA: least.amps, near });
  if (states.length < statesOf(model).length && judge.faults(trial).length > judge.faults(tryOnce(trialSizes)).length)
    return null;
  const neighbours = new Neighbours({ model, lots, least, budgetV, sizes: trialSizes, stock, judge, tryOnce });
  const mine = new Set(lots.flatMap(({ cables }) => cables));
  return {
    sizes: circuit.cables.map(
      (cable, index) => fixedGauge(cable) ?? (mine.has(index) ? (trialSizes[index] ?? null) : null),
    ),
    trialSizes,
    lots: lots.map((lot) => neighbours.describe(lot)),
    failing: found.failing,
    unknownLoads: found.unknown,
    proven: proven && found.failing.length === 0,
    trial,
  };
}

function choose(model: Model, stock: readonly GaugeId[], largestSize: GaugeId): Choice {
  const quick = chooseIn(model, stock, largestSize, decidingStates(model));
  const choice = quick ?? chooseIn(model, stock, largestSize, statesOf(model));
  if (choice === null) throw new Error('choose: every state was worked');
  return choice;
}

/**
 * Sizes for every auto cable that carries current: least metal in stock that keeps the drop, the fuses, ampacity, heat
 * and grounds; see `searchSizes`. Where currents cannot be told (no rating, no amplifier, a dead short) nothing is chosen.
 */
export function chooseSizes(model: Model): Choice {
  const stock = stockOf(model);
  const largestSize = stock.at(-1);
  const drawn = model.demands.some((demand) => demand !== null);
  if (!model.shorted && model.rated && drawn && largestSize !== undefined) return choose(model, stock, largestSize);
  const sizes = model.circuit.cables.map(fixedGauge);
  return {
    sizes,
    trialSizes: sizes.map((size) => size ?? ANY_SIZE),
    lots: [],
    failing: [],
    unknownLoads: new Set(),
    proven: true,
    trial: null,
  };
}
