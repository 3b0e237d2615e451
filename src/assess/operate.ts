/** The operating point with given sizes: currents, conductor temperatures and fuse ratings that agree with one another. */
import type { GaugeId } from '../calc/conductor/gauge.ts';
import { neededRating } from '../calc/fuse/rating.ts';
import { solveNetwork } from '../calc/network/solve.ts';
import type { NetworkLoad, Resistor } from '../calc/network/types.ts';
import { pointAlongWays } from './alongWays.ts';
import { ANY_SIZE, conductorOhms, type OhmsAt, settledC } from './conductor.ts';
import { drawnA } from './demand.ts';
import type { Model } from './model.ts';
import { fixedOhms } from './ohms.ts';
import { once } from './perModel.ts';
import { linkEdge, pickRating } from './ratings.ts';
import { aloneStates, heatingShareAt, heatingShares, type Source, statesOf } from './states.ts';
import { ambientC } from './surroundings.ts';

/** Figures of a whole net, by edge, cable or load: bare numbers where they are worked with every sweep. */
export type Figures = readonly number[] | Float64Array;

export interface StatePoint extends Source {
  /** By edge, A: positive from a to b in a net solved as a whole; in a radial one without sign. */
  readonly amps: Figures;
  /** By load; 0 where it draws nothing. */
  readonly loadAmps: Figures;
  readonly loadVolts: Figures;
  /** By cable and stretch, degC; null where it finds no temperature to settle at. */
  readonly stretchC: readonly (readonly (number | null)[])[];
  /** By cable, ohm: the conductor alone. */
  readonly cableOhm: Figures;
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
  readonly fullA: Figures;
  /** By edge, the worse of the states, A: with several batteries, what flows when all feed alike. */
  readonly sharedA: Figures;
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

/** The conductors at their sizes: the same through all states and rounds. */
export interface Conductors {
  readonly sizes: readonly GaugeId[];
  readonly ohmsAt: OhmsAt;
}

interface Sweep {
  readonly amps: Figures;
  readonly loadAmps: Figures;
  readonly loadVolts: Figures;
  readonly nodeVolts: readonly number[] | null;
}

function sweepNetwork(
  { circuit, sides, demands }: Model,
  { volts, alone, relaysOpen }: Source,
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
    resistors: sides.edges.map(({ kind, index, a, b }, edge): Resistor => {
      // an open one stays as a piece of no length
      const isOpen = relaysOpen === true && kind === 'contact' && circuit.contacts[index]?.kind === 'relay';
      return { a, b: isOpen ? a : b, ohm: isOpen ? 1 : (ohms[edge] ?? 0) };
    }),
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
    // what an open relay leaves without a source draws nothing, and so loses nothing
    const isParted = relaysOpen === true && result.unfed.includes(index);
    loadVolts[load] = isParted ? volts : (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0);
  }
  return { amps: result.resistorAmps, loadAmps, loadVolts, nodeVolts: result.nodeVolts };
}

function differs(one: Figures, other: Figures): boolean {
  for (const [index, value] of one.entries())
    if (Math.abs(value - (other[index] ?? 0)) > CLOSE * Math.max(1, Math.abs(value))) return true;
  return false;
}

const agree = (one: Sweep, other: Sweep): boolean =>
  !differs(one.amps, other.amps) && !differs(one.loadAmps, other.loadAmps);

/** Of the constant currents, the least share that flows: less than all of one means that the voltage does not suffice for it. */
const shareOfConstant = ({ demands }: Model, { loadAmps, relaysOpen }: StatePoint): number =>
  Math.min(
    1,
    ...demands.map((demand, load) => {
      const amps = loadAmps[load] ?? 0;
      const isParted = relaysOpen === true && amps === 0;
      return demand?.law === 'constant' && !isParted ? amps / demand.amps : 1;
    }),
  );

/**
 * Where the sweeps tend to, were each change that share of the one before (Aitken): spares a third of them. The share
 * is that of all changes together.
 */
function ahead(now: Figures, before: Figures, change: Figures | null): Figures {
  if (change === null) return now;
  let [both, square] = [0, 0];
  for (const [edge, amps] of now.entries()) {
    const old = change[edge] ?? 0;
    both += (amps - (before[edge] ?? 0)) * old;
    square += old * old;
  }
  const share = square === 0 ? 0 : both / square;
  if (Math.abs(share) >= 0.5) return now;
  return now.map((amps, edge) => amps + ((amps - (before[edge] ?? 0)) * share) / (1 - share));
}

/** Currents by the network solver and temperatures in turn until they agree. */
function solveMeshed(
  model: Model,
  { sizes, ohmsAt }: Conductors,
  fixed: readonly number[],
  source: Source,
  start: Sweep,
): StatePoint | CannotCarry {
  const { state } = source;
  const shares = heatingShares(model);
  let sweep = start;
  let change: Figures | null = null;
  for (let count = 0; ; count += 1) {
    const { amps } = sweep;
    const cableOhm = ohmsAt(amps, shares);
    const ohms = fixed.map((ohm, edge) => ohm + (cableOhm[edge] ?? 0));
    const next = sweepNetwork(model, source, ohms, sweep);
    if ('largestShare' in next) return { ok: false, state, largestShare: next.largestShare };
    if (agree(next, sweep)) {
      const stretchC = model.circuit.cables.map((_, cable) =>
        settledC(model, cable, sizes[cable] ?? ANY_SIZE, (amps[cable] ?? 0) * (shares[cable] ?? 1)),
      );
      return { ...source, ...next, stretchC, cableOhm: cableOhm.slice() };
    }
    // what never agreed with itself is no operating point
    if (count >= MOST_SWEEPS) return { ok: false, state, largestShare: 0 };
    const stepped = next.amps.map((now, edge) => now - (amps[edge] ?? 0));
    sweep = { ...next, amps: ahead(next.amps, amps, change) };
    change = stepped;
  }
}

/** Currents, voltages and temperatures that agree: along the ways while that settles, else by the network. */
function solveState(
  model: Model,
  conductors: Conductors,
  fixed: readonly number[],
  source: Source,
  start: Sweep,
): StatePoint | CannotCarry {
  const along = model.ways.radial ? pointAlongWays(model, conductors, fixed, source, start.amps) : null;
  const point = along ?? solveMeshed(model, conductors, fixed, source, start);
  if ('ok' in point) return point;
  const largestShare = source.alone === undefined ? shareOfConstant(model, point) : 1;
  return largestShare < 1 - SHORT_SHARE ? { ok: false, state: source.state, largestShare } : point;
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

/** By edge, the sum over the loads whose whole current passes it. */
export function summedBehind({ circuit, sides, ways }: Model, byLoad: readonly number[]): number[] {
  const atNode = new Float64Array(sides.at.length);
  for (const [load, { plus, minus }] of circuit.loads.entries()) {
    atNode[plus] = (atNode[plus] ?? 0) + (byLoad[load] ?? 0);
    atNode[minus] = (atNode[minus] ?? 0) + (byLoad[load] ?? 0);
  }
  const sums = sides.edges.map(() => 0);
  for (const { edge, from, to } of ways.steps.toReversed()) {
    if (ways.countOf(edge) > 0) sums[edge] = atNode[to] ?? 0;
    atNode[from] = (atNode[from] ?? 0) + (atNode[to] ?? 0);
  }
  return sums;
}

/** By edge, a current that no operating point of a radial net falls short of: no load has more than the posts' voltage or less than half of it, A. */
function surelyA(model: Model, sources: readonly Source[]): number[] {
  const volts = Math.min(...sources.map((source) => source.volts));
  const drawn = model.demands.map((demand) => {
    if (demand === null) return 0;
    return drawnA(demand, demand.law === 'proportional' ? volts / 2 : volts);
  });
  return summedBehind(model, drawn);
}

function greatestA({ sides }: Model, points: readonly StatePoint[]): Float64Array {
  const most = new Float64Array(sides.edges.length);
  for (const { amps } of points) {
    for (let edge = 0; edge < most.length; edge += 1) most[edge] = Math.max(most[edge] ?? 0, Math.abs(amps[edge] ?? 0));
  }
  return most;
}

/** By link: the least rating by the full current through each edge, A. */
function needsAt(model: Model, fullA: Figures): number[] {
  return model.circuit.links.map(({ zone }, index) => {
    const edge = linkEdge(model, index);
    const full = fullA[edge] ?? 0;
    return neededRating({
      fullA: full,
      heatingA: full * heatingShareAt(model, edge),
      holderC: ambientC(model.settings, zone),
    });
  });
}

const leastRatings = (model: Model, leastA: Figures): (number | null)[] =>
  needsAt(model, leastA).map((needA, link) => pickRating(model, link, needA));

/**
 * The operating point of every state, with auto fuse ratings found along with it: they start from the least current
 * and only rise, so the search ends, and at the smallest ratings that agree with the currents they let flow.
 */
export function operate(
  model: Model,
  sizes: readonly GaugeId[],
  { ratings: kept = null, states: sources = statesOf(model), leastA = null, near = [] }: OperateOptions = {},
): Operating | CannotCarry {
  const conductors: Conductors = { sizes, ohmsAt: conductorOhms(model, sizes) };
  let ratings = kept ?? leastRatings(model, leastA ?? surelyA(model, sources));
  let fixed = fixedOhms(model, ratings);
  let before = near;
  // worked once, with the first ratings: these are the smallest, lose most, and so let constant power draw most
  const alone = aloneStates(model, sources).flatMap((source) => {
    const point = solveState(model, conductors, fixed, source, idle(model, source.volts, leastA));
    // what one battery cannot carry by itself is no case to size for
    return 'ok' in point ? [] : [point];
  });
  for (let round = 0; ; round += 1) {
    const states: StatePoint[] = [];
    for (const source of sources) {
      const start =
        before.find(({ state, relaysOpen }) => state === source.state && relaysOpen === source.relaysOpen) ??
        idle(model, source.volts, leastA);
      const point = solveState(model, conductors, fixed, source, start);
      if ('ok' in point) return point;
      states.push(point);
    }
    before = states;
    const sharedA = greatestA(model, states);
    const fullA = greatestA(model, [...states, ...alone]);
    // with ratings that are kept nobody may ask
    const needs = once(() => needsAt(model, fullA));
    const found =
      kept ??
      model.circuit.links.map((_, link) => raised(model, link, ratings[link] ?? null, needs()[link] ?? 0, round));
    if (found.every((rating, index) => rating === ratings[index]) || round >= MOST_RATING_ROUNDS) {
      return {
        ok: true,
        states,
        ratings,
        get needs() {
          return needs();
        },
        fullA,
        sharedA,
      };
    }
    ratings = found;
    fixed = fixedOhms(model, ratings);
  }
}
