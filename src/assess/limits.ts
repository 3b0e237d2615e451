/** The largest current that the fuses let into each cable, by greatest flow with the ratings as capacities. */
import { type FlowEdge, maxFlow } from '../calc/network/flow.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { linkEdge } from './ratings.ts';
import { partsOf, reach } from './sides.ts';

/** The circuit as a flow net, with one node more that all current leaves by, and one that charging currents come from. */
interface Net {
  readonly nodes: number;
  readonly plus: readonly number[];
  readonly leave: number;
  readonly charging: number;
  /** By edge of the circuit, both its directions. */
  readonly conductors: readonly (readonly [FlowEdge, FlowEdge])[];
  /** Amplifiers let any current pass from supply to ground, as a failed one does. */
  readonly loads: readonly FlowEdge[];
  /** One live node of each set that cables join: a short anywhere in it is fed alike. */
  readonly shortAt: readonly number[];
}

function shortNodes({ circuit, sides }: Model): number[] {
  const partAt = partsOf(sides, ({ kind }) => kind === 'cable');
  return [...new Set(partAt.filter((_, node) => sides.live[node] === true && node !== circuit.body))];
}

function netOf(model: Model, linkCapacityA: readonly number[], firstLink: number): Net {
  const { circuit, sides } = model;
  return {
    shortAt: shortNodes(model),
    nodes: circuit.nodes + 2,
    plus: circuit.sources.map(({ plus }) => plus),
    leave: circuit.nodes,
    charging: circuit.nodes + 1,
    conductors: sides.edges.map(({ a, b }, edge) => {
      const capacity = linkCapacityA[edge - firstLink] ?? Infinity;
      return [
        { from: a, to: b, capacity },
        { from: b, to: a, capacity },
      ];
    }),
    loads: circuit.loads.map(({ plus, minus }) => ({ from: plus, to: minus, capacity: Infinity })),
  };
}

/** Greatest flow with one edge of the circuit taken out. */
function flow(
  { nodes, conductors, loads }: Net,
  without: number,
  sources: readonly number[],
  sinks: readonly number[],
  more: readonly FlowEdge[] = [],
): number {
  const edges = [...conductors.flatMap((pair, index) => (index === without ? [] : pair)), ...loads, ...more];
  return maxFlow({ nodes, edges, sources, sinks });
}

/** Out of some nodes into one short to the body behind a fuse, wherever that takes most, A; 0 where no fuse lies before any. */
function greatestFusedShortA(net: Net, without: number, from: readonly number[]): number {
  const shorts = net.shortAt.map((node) => flow(net, without, from, [node]));
  return Math.max(0, ...shorts.filter((current) => current !== Infinity));
}

/** What a battery can carry: the same current passes its two posts. */
interface BatteryLimit {
  readonly minus: number;
  /** Out of its positive post, through loads or into one short behind a fuse, A. */
  readonly givesA: number;
  /** Into its positive post from the other batteries, A. */
  readonly takesA: number;
}

function batteryLimits({ circuit }: Model, net: Net): BatteryLimit[] {
  const minuses = circuit.sources.map(({ minus }) => minus);
  return circuit.sources.map(({ plus, minus }) => {
    const others = net.plus.filter((other) => other !== plus);
    return {
      minus,
      givesA: Math.max(flow(net, -1, [plus], minuses), greatestFusedShortA(net, -1, [plus])),
      takesA: others.length === 0 ? 0 : flow(net, -1, others, [plus]),
    };
  });
}

interface Currents {
  /** A short on the cable, fed from either end. */
  readonly shorts: readonly number[];
  /** Through it, either way. */
  readonly overloads: readonly number[];
}

function liveCurrents({ circuit }: Model, net: Net, cable: number, [a, b]: readonly [number, number]): Currents {
  // a battery that is empty or failed takes current at its own positive post
  const ends = [...circuit.sources.map(({ minus }) => minus), ...net.plus];
  const inflow = (end: number) => flow(net, cable, net.plus, [end]);
  const outflow = (end: number) => Math.max(flow(net, cable, [end], ends), greatestFusedShortA(net, cable, [end]));
  // a fuse ahead lets no more through to what lies behind than into a short on the cable itself
  const through = (intoA: number, end: number) => (intoA === Infinity ? outflow(end) : intoA);
  const [intoA, intoB] = [inflow(a), inflow(b)];
  return { shorts: [intoA, intoB], overloads: [through(intoA, b), through(intoB, a)] };
}

/** In a cable of the return: what loads, charging and one fused short elsewhere send through it, as far as batteries take it back. */
function returnCurrents(
  { circuit, sides }: Model,
  net: Net,
  cable: number,
  ends: readonly [number, number],
  batteries: () => readonly BatteryLimit[],
): Currents {
  const overloads: number[] = [];
  const minuses = circuit.sources.map(({ minus }) => minus);
  for (const [from, to] of [ends, [ends[1], ends[0]] as const]) {
    if (flow(net, cable, [to], minuses) === 0) continue;
    const posts = batteries();
    const back = posts.map(({ minus, givesA }) => ({ from: minus, to: net.leave, capacity: givesA }));
    const outA = flow(net, cable, [to], [net.leave], back);
    const charging = posts.map(({ minus, takesA }) => ({ from: net.charging, to: minus, capacity: takesA }));
    overloads.push(Math.min(outA, flow(net, cable, [...net.plus, net.charging], [from], charging)));
    const fromBody = reach([circuit.body], sides, ({ kind, index }) => !(kind === 'cable' && index === cable))[from];
    if (fromBody) overloads.push(outA);
  }
  return { shorts: [], overloads };
}

/** A short that nothing limits is the unprotected length's matter; an overload that nothing limits is without limit. */
function greatestLimited({ shorts, overloads }: Currents): number {
  const greatestA = Math.max(0, ...overloads, ...shorts.filter((current) => current !== Infinity));
  return greatestA === 0 && shorts.includes(Infinity) ? Infinity : greatestA;
}

function workOut(model: Model, linkCapacityA: readonly number[]): number[] {
  const { circuit, sides } = model;
  const net = netOf(model, linkCapacityA, linkEdge(model, 0));
  let known: readonly BatteryLimit[] | null = null;
  const batteries = (): readonly BatteryLimit[] => {
    known ??= batteryLimits(model, net);
    return known;
  };
  return circuit.cables.map(({ a, b }, cable) => {
    const isLive = sides.live[a] === true && sides.live[b] === true;
    return greatestLimited(
      isLive ? liveCurrents(model, net, cable, [a, b]) : returnCurrents(model, net, cable, [a, b], batteries),
    );
  });
}

const known = perModel(() => new Map<string, readonly number[]>());

/**
 * By cable: the largest current that fuses let into it, A; Infinity where no fuse limits any, 0 where none comes.
 *
 * A short on a live cable is fed from both its ends; an overload passes through it, from an end that sources feed to an
 * end that loads, another battery, or one short behind a fuse further on take from; each is the greatest flow with fuse ratings as capacities (the
 * smallest set of ratings that cuts it off). A short that nothing limits is governed by the unprotected length, and
 * the overload through the cable counts there. A return carries no more than its loads are fed, nor than the batteries
 * it leads to can give. So series chains, unfused step-downs, rings and a second battery are one case. A main fuse of
 * 125 A before two fused branches of 60 and 40 A: 125 A in the feed on both
 * sides of the main fuse, 60 and 40 A in the branches and their grounds.
 * Worked out once for each model and set of ratings.
 */
export function limitsOf(model: Model, linkCapacityA: readonly number[]): readonly number[] {
  const table = known(model);
  const key = linkCapacityA.join();
  const before = table.get(key);
  if (before !== undefined) return before;
  const limits = workOut(model, linkCapacityA);
  table.set(key, limits);
  return limits;
}
