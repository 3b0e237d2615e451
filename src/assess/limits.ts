/** The largest current that the fuses let into each cable, by greatest flow with the ratings as capacities. */
import { type FlowEdge, FlowNet } from '../calc/network/flow.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { linkEdge } from './ratings.ts';
import { partsOf, reach } from './sides.ts';
import { treeLimits } from './treeLimits.ts';

/** The circuit as a flow net, both directions of every conductor one after the other, then the loads. */
interface Net {
  readonly net: FlowNet;
  readonly edges: readonly FlowEdge[];
  readonly plus: readonly number[];
  /** One live node of each set that cables join: a short anywhere in it is fed alike. */
  readonly shortAt: readonly number[];
}

const shortNodes = perModel(({ circuit, sides }): number[] => {
  const partAt = partsOf(sides, ({ kind }) => kind === 'cable' || kind === 'contact');
  return [...new Set(partAt.filter((_, node) => sides.live[node] === true && node !== circuit.body))];
});

function netOf(model: Model, linkCapacityA: readonly number[], firstLink: number): Net {
  const { circuit, sides } = model;
  const edges = sides.edges.flatMap(({ a, b }, edge): FlowEdge[] => {
    const capacity = linkCapacityA[edge - firstLink] ?? Infinity;
    return [
      { from: a, to: b, capacity },
      { from: b, to: a, capacity },
    ];
  });
  // an amplifier lets any current pass from supply to ground, as a failed one does
  for (const { plus, minus } of circuit.loads) edges.push({ from: plus, to: minus, capacity: Infinity });
  return {
    net: new FlowNet(circuit.nodes, edges),
    edges,
    plus: circuit.sources.map(({ plus }) => plus),
    shortAt: shortNodes(model),
  };
}

/** The two directions of an edge of the circuit. */
const bothWays = (edge: number): number[] => (edge < 0 ? [] : [2 * edge, 2 * edge + 1]);

/** Greatest flow with one edge of the circuit taken out. */
const flow = (
  { net }: Pick<Net, 'net'>,
  without: number,
  sources: readonly number[],
  sinks: readonly number[],
): number => net.flow(sources, sinks, bothWays(without));

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

/** The net with one node more that all current leaves by, as far as the batteries give it, and one that charging currents come from. */
interface ReturnNet extends Pick<Net, 'net'> {
  readonly leave: number;
  readonly charging: number;
}

function returnNetOf({ circuit }: Model, net: Net): ReturnNet {
  const [leave, charging] = [circuit.nodes, circuit.nodes + 1];
  const posts = batteryLimits(circuit, net).flatMap(({ minus, givesA, takesA }): FlowEdge[] => [
    { from: minus, to: leave, capacity: givesA },
    { from: charging, to: minus, capacity: takesA },
  ]);
  return { net: new FlowNet(circuit.nodes + 2, [...net.edges, ...posts]), leave, charging };
}

function batteryLimits(circuit: Model['circuit'], net: Net): BatteryLimit[] {
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
  returned: () => ReturnNet,
): Currents {
  const overloads: number[] = [];
  const minuses = circuit.sources.map(({ minus }) => minus);
  for (const [from, to] of [ends, [ends[1], ends[0]] as const]) {
    if (flow(net, cable, [to], minuses) === 0) continue;
    const posts = returned();
    const outA = flow(posts, cable, [to], [posts.leave]);
    overloads.push(Math.min(outA, flow(posts, cable, [...net.plus, posts.charging], [from])));
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

/** `limitsOf` of any circuit, by greatest flows. */
export function limitsByFlow(model: Model, linkCapacityA: readonly number[]): number[] {
  const { circuit, sides } = model;
  const net = netOf(model, linkCapacityA, linkEdge(model, 0));
  let known: ReturnNet | null = null;
  const returned = (): ReturnNet => {
    known ??= returnNetOf(model, net);
    return known;
  };
  return circuit.cables.map(({ a, b }, cable) => {
    const isLive = sides.live[a] === true && sides.live[b] === true;
    return greatestLimited(
      isLive ? liveCurrents(model, net, cable, [a, b]) : returnCurrents(model, net, cable, [a, b], returned),
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
  const limits = treeLimits(model, linkCapacityA) ?? limitsByFlow(model, linkCapacityA);
  table.set(key, limits);
  return limits;
}
