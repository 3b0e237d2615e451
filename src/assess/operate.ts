/** The operating point with given sizes: currents, conductor temperatures and fuse ratings that agree with one another. */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { neededRating } from '../calc/fuse/rating.ts';
import { solveNetwork } from '../calc/network/solve.ts';
import type { NetworkLoad, Resistor } from '../calc/network/types.ts';
import { conductorOhm, settledC } from './conductor.ts';
import { drawnA } from './demand.ts';
import type { Model } from './model.ts';
import { fixedOhms } from './ohms.ts';
import { linkEdge, pickRating } from './ratings.ts';
import { aloneStates, heatingShare, type Source, statesOf } from './states.ts';
import { ambientC } from './surroundings.ts';

export interface StatePoint extends Source {
  /** By edge, A: positive from a to b in a net solved as a whole; in a radial one without sign. */
  readonly amps: readonly number[];
  /** By load; 0 where it draws nothing. */
  readonly loadAmps: readonly number[];
  readonly loadVolts: readonly number[];
  /** By cable and stretch, degC; null where it finds no temperature to settle at. */
  readonly stretchC: readonly (readonly (number | null)[])[];
  /** By cable, ohm: the conductor alone. */
  readonly cableOhm: readonly number[];
  /** By node, V; null in a radial net, where nothing needs it. */
  readonly nodeVolts: readonly number[] | null;
}

export interface Operating {
  readonly ok: true;
  readonly states: readonly StatePoint[];
  /** By link, A; null where no link held will do, or nothing tells what it must carry. */
  readonly ratings: readonly (number | null)[];
  /** By link: least rating by current and holder temperature, A. */
  readonly needs: readonly number[];
  /** By edge, the worst of the states, and of each battery feeding alone, A. */
  readonly fullA: readonly number[];
  /** By edge, the worse of the states, A: with several batteries, what flows when all feed alike. */
  readonly sharedA: readonly number[];
}

export interface OperateOptions {
  /** Ratings to keep as they are, instead of choosing them. */
  readonly ratings?: readonly (number | null)[] | null;
  /** The states to work; every one of them unless told otherwise. */
  readonly states?: readonly Source[];
  /** By edge, A: currents to start from, none above what will flow; spares a few rounds. */
  readonly leastA?: readonly number[] | null;
  /** Points of a like case to start the currents from. */
  readonly near?: readonly StatePoint[];
}

export interface CannotCarry {
  readonly ok: false;
  readonly state: Source['state'];
  /** Share of the loads the net just carries. */
  readonly largestShare: number;
}

const CLOSE = 1e-9;
const MOST_SWEEPS = 100;
const MOST_RATING_ROUNDS = 24;
/** A constant current that falls short by more than this is not carried. */
const SHORT_SHARE = 1e-6;
/** Added to a rating, so that the next one held is picked. */
const STEP_SHARE = 1e-6;

/** Stands in for a size that nothing decides: such a cable carries nothing. */
export const ANY_SIZE = 'sae:4/0' as GaugeId;

interface Sweep {
  readonly amps: readonly number[];
  readonly loadAmps: readonly number[];
  readonly loadVolts: readonly number[];
  readonly nodeVolts: readonly number[] | null;
}

/** One sweep along the ways: volts from the currents so far, currents from those volts. Null when a load is left without voltage. */
function sweepRadial(
  { ways, demands, sides }: Model,
  volts: number,
  ohms: readonly number[],
  before: Sweep,
): Sweep | null {
  const amps = sides.edges.map(() => 0);
  const loadVolts: number[] = [];
  const loadAmps: number[] = [];
  for (const [load, demand] of demands.entries()) {
    const way = ways.edgesOf[load] ?? [];
    let left = volts;
    for (const edge of way) left -= (ohms[edge] ?? 0) * (before.amps[edge] ?? 0);
    // below half the voltage more current brings less power: no operating point is that low
    if (demand !== null && left <= volts / 2) return null;
    loadVolts.push(demand === null ? 0 : left);
    loadAmps.push(demand === null ? 0 : drawnA(demand, left));
  }
  for (const [load, current] of loadAmps.entries()) {
    for (const edge of ways.edgesOf[load] ?? []) amps[edge] = (amps[edge] ?? 0) + current;
  }
  return { amps, loadAmps, loadVolts, nodeVolts: null };
}

function sweepNetwork(
  { circuit, sides, demands }: Model,
  { volts, alone }: Source,
  ohms: readonly number[],
  before: Sweep,
): Sweep | { largestShare: number } {
  const on = demands.flatMap((demand, load) => (demand === null ? [] : [{ demand, load }]));
  const loads = on.map(({ demand, load }): NetworkLoad => {
    const { plus, minus } = circuit.loads[load] ?? { plus: 0, minus: 0 };
    if (demand.law === 'power') return { plus, minus, law: { kind: 'power', watts: demand.watts } };
    if (demand.law === 'proportional')
      return { plus, minus, law: { kind: 'current', amps: demand.amps, atVolts: demand.atVolts } };
    // a constant current at the voltage of the sweep before: agrees once the sweeps do
    const atVolts = Math.max(before.loadVolts[load] ?? volts, volts / 100);
    return { plus, minus, law: { kind: 'current', amps: demand.amps, atVolts } };
  });
  const result = solveNetwork({
    nodes: circuit.nodes,
    resistors: sides.edges.map(({ a, b }, index): Resistor => ({ a, b, ohm: ohms[index] ?? 0 })),
    sources: circuit.sources
      .filter((_, source) => alone === undefined || alone === source)
      .map(({ plus, minus }) => ({ plus, minus, volts, ohm: 0 })),
    loads,
  });
  if (!result.ok) return { largestShare: result.reason === 'cannotCarry' ? result.largestShare : 0 };
  const loadAmps = demands.map(() => 0);
  const loadVolts = demands.map(() => 0);
  for (const [index, { load }] of on.entries()) {
    const { plus, minus } = circuit.loads[load] ?? { plus: 0, minus: 0 };
    loadAmps[load] = result.loadAmps[index] ?? 0;
    loadVolts[load] = (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0);
  }
  return { amps: result.resistorAmps, loadAmps, loadVolts, nodeVolts: result.nodeVolts };
}

const differs = (one: readonly number[], other: readonly number[]): boolean =>
  one.some((value, index) => Math.abs(value - (other[index] ?? 0)) > CLOSE * Math.max(1, Math.abs(value)));

const agree = (one: Sweep, other: Sweep): boolean =>
  !differs(one.amps, other.amps) && !differs(one.loadAmps, other.loadAmps);

/** Currents with the resistances held: along the ways while that settles, else by the network. */
function settle(model: Model, source: Source, ohms: readonly number[], start: Sweep): Sweep | { largestShare: number } {
  let sweep: Sweep | null = model.ways.radial ? start : null;
  for (let count = 0; sweep !== null && count < MOST_SWEEPS; count += 1) {
    const next: Sweep | null = sweepRadial(model, source.volts, ohms, sweep);
    if (next !== null && agree(next, sweep)) return next;
    sweep = next;
  }
  return sweepNetwork(model, source, ohms, start);
}

/** Of the constant currents, the least share that flows: less than all of one means that the voltage does not suffice for it. */
const shareOfConstant = ({ demands }: Model, { loadAmps }: Sweep): number =>
  Math.min(1, ...demands.map((demand, load) => (demand?.law === 'constant' ? (loadAmps[load] ?? 0) / demand.amps : 1)));

/** Currents and temperatures in turn until they agree. */
function solveState(
  model: Model,
  sizes: readonly GaugeId[],
  ratings: readonly (number | null)[],
  source: Source,
  start: Sweep,
): StatePoint | CannotCarry {
  const { state, volts } = source;
  const { cables } = model.circuit;
  const fixed = fixedOhms(model, ratings);
  const share = heatingShare(model);
  let sweep = start;
  for (let count = 0; ; count += 1) {
    const stretchC = cables.map((_, index) =>
      settledC(model, index, sizes[index] ?? ANY_SIZE, Math.abs(sweep.amps[index] ?? 0) * share),
    );
    const cableOhm = cables.map((_, index) =>
      conductorOhm(model, index, sizes[index] ?? ANY_SIZE, stretchC[index] ?? []),
    );
    const ohms = fixed.map((ohm, edge) => ohm + (cableOhm[edge] ?? 0));
    const next = settle(model, source, ohms, sweep);
    if ('largestShare' in next) return { ok: false, state, largestShare: next.largestShare };
    const settled = agree(next, sweep);
    sweep = next;
    if (!settled && count < MOST_SWEEPS) continue;
    // what never agreed with itself is no operating point
    if (!settled) return { ok: false, state, largestShare: 0 };
    const largestShare = source.alone === undefined ? shareOfConstant(model, sweep) : 1;
    if (largestShare < 1 - SHORT_SHARE) return { ok: false, state, largestShare };
    return { state, volts, ...sweep, stretchC, cableOhm };
  }
}

/** Nothing flows yet, or what flows at least. */
const idle = ({ sides, demands }: Model, volts: number, leastA: readonly number[] | null): Sweep => ({
  amps: leastA ?? sides.edges.map(() => 0),
  loadAmps: demands.map(() => 0),
  loadVolts: demands.map(() => volts),
  nodeVolts: null,
});

/**
 * Rating after a round: it only rises, and one step at a time, because with a larger link more may flow or less; a link
 * that none held satisfies stays without.
 */
function raised(model: Model, link: number, before: number | null, needA: number, round: number): number | null {
  const picked = pickRating(model, link, needA);
  if (round === 0 && before === null) return picked;
  if (before === null || picked === null) return null;
  return picked <= before ? before : pickRating(model, link, before * (1 + STEP_SHARE));
}

/** By edge, a current that no operating point of a radial net falls short of: no load has more than the posts' voltage or less than half of it, A. */
function surelyA(model: Model, sources: readonly Source[]): number[] {
  const volts = Math.min(...sources.map((source) => source.volts));
  const drawn = model.demands.map((demand) => {
    if (demand === null) return 0;
    return drawnA(demand, demand.law === 'proportional' ? volts / 2 : volts);
  });
  return model.ways.behind.map((loads) => (loads ?? []).reduce((sum, load) => sum + (drawn[load] ?? 0), 0));
}

const greatestA = ({ sides }: Model, points: readonly StatePoint[]): number[] =>
  sides.edges.map((_, edge) => Math.max(...points.map(({ amps }) => Math.abs(amps[edge] ?? 0))));

/** By link: the least rating by the full current through each edge, A. */
function needsAt(model: Model, fullA: readonly number[]): number[] {
  const share = heatingShare(model);
  return model.circuit.links.map(({ zone }, index) => {
    const full = fullA[linkEdge(model, index)] ?? 0;
    return neededRating({ fullA: full, heatingA: full * share, holderC: ambientC(model.settings, zone) });
  });
}

/**
 * The operating point of every state, with auto fuse ratings found along with it: they start from the least current
 * and only rise, so the search ends, and at the smallest ratings that agree with the currents they let flow.
 */
export function operate(
  model: Model,
  sizes: readonly GaugeId[],
  { ratings: kept = null, states: sources = statesOf(model), leastA = null, near = [] }: OperateOptions = {},
): Operating | CannotCarry {
  const { links } = model.circuit;
  const atLeast = needsAt(model, leastA ?? surelyA(model, sources));
  let ratings = kept ?? links.map((_, link) => pickRating(model, link, atLeast[link] ?? 0));
  let before = near;
  // worked once, with the first ratings: these are the smallest, lose most, and so let constant power draw most
  const alone = aloneStates(model, sources).flatMap((source) => {
    const point = solveState(model, sizes, ratings, source, idle(model, source.volts, leastA));
    // what one battery cannot carry by itself is no case to size for
    return 'ok' in point ? [] : [point];
  });
  for (let round = 0; ; round += 1) {
    const states: StatePoint[] = [];
    for (const source of sources) {
      const start = before.find(({ state }) => state === source.state) ?? idle(model, source.volts, leastA);
      const point = solveState(model, sizes, ratings, source, start);
      if ('ok' in point) return point;
      states.push(point);
    }
    before = states;
    const sharedA = greatestA(model, states);
    const fullA = greatestA(model, [...states, ...alone]);
    const needs = needsAt(model, fullA);
    const found = kept ?? links.map((_, link) => raised(model, link, ratings[link] ?? null, needs[link] ?? 0, round));
    if (found.every((rating, index) => rating === ratings[index]) || round >= MOST_RATING_ROUNDS) {
      return { ok: true, states, ratings, needs, fullA, sharedA };
    }
    ratings = found;
  }
}
