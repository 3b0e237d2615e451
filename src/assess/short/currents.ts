/** The currents of a dead short on a cable, lowest and highest: in its conductor, and in each device that sees it. */
import type { FaultPoint } from '../../calc/network/fault.ts';
import type { Facts } from '../facts.ts';
import { per } from '../perModel.ts';
import { linkEdge } from '../ratings.ts';
import { type FedEnd, isTree } from './ends.ts';
import { type BothFaults, bothFaults, cableOhmAt, faultA, faultsOf, type NetCase, returnOf } from './net.ts';

export interface Span {
  readonly lowestA: number;
  readonly highestA: number;
}

/** What flows into a short on a cable from one of its ends. */
export interface EndCurrents {
  /** Through the conductor: lowest for a short at its far end or behind it, highest for one at this end. */
  readonly conductor: Span;
  ofLink(link: number): Span;
}

/** In a tree, by node: the lowest current of a short there, or anywhere behind it with no further device between, A. */
const lowestBehind = per((facts: Facts): Float64Array | null => {
  const both = bothFaults(facts);
  const { sides, ways } = facts.model;
  if (both === null) return null;
  const lowest = Float64Array.from(sides.at, (_, node) => faultA(both.lowest, node, both.returnOhm));
  for (const { edge, from, to } of ways.steps.toReversed()) {
    const kind = sides.edges[edge]?.kind;
    if (sides.live[to] !== true || (kind !== 'cable' && kind !== 'contact')) continue;
    lowest[from] = Math.min(lowest[from] ?? 0, lowest[to] ?? 0);
  }
  return lowest;
});

function treeCurrents(facts: Facts, { highest }: BothFaults, { near, far }: FedEnd): EndCurrents {
  const highestA = faultA(highest, near, 0);
  const span = { lowestA: Math.min(lowestBehind(facts)?.[far] ?? 0, highestA), highestA };
  // one way: every device on it carries all of it
  return { conductor: span, ofLink: () => span };
}

const points = per((_: BothFaults) => new Map<string, FaultPoint | null>());

/** Everything during the extremes of a short at a node, worked once for each. */
function pointAt(both: BothFaults, extreme: 'highest' | 'lowest', node: number): FaultPoint | null {
  const known = points(both);
  const key = `${extreme} ${node}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const point = both[extreme].at(node, extreme === 'lowest' ? both.returnOhm : 0);
  known.set(key, point);
  return point;
}

const amps = (point: FaultPoint | null, edge: number): number => Math.abs(point?.resistorAmps[edge] ?? 0);

/** Into a node from everything but one edge, A: a dead short there holds its ends apart. */
function withoutEdgeA(facts: Facts, point: FaultPoint | null, node: number, edge: number): number {
  if (point === null) return 0;
  const { a = -1 } = facts.model.sides.edges[edge] ?? {};
  const through = point.resistorAmps[edge] ?? 0;
  return Math.max(0, point.amps - (a === node ? -through : through));
}

function meshCurrents(facts: Facts, both: BothFaults, cable: number, { near, far }: FedEnd): EndCurrents {
  const high = pointAt(both, 'highest', near);
  const low = pointAt(both, 'lowest', far);
  const span = (lowestA: number, highestA: number): Span => ({ lowestA: Math.min(lowestA, highestA), highestA });
  return {
    conductor: span(amps(low, cable), withoutEdgeA(facts, high, near, cable)),
    ofLink: (link) => span(amps(low, linkEdge(facts.model, link)), amps(high, linkEdge(facts.model, link))),
  };
}

export const currentsAt = (facts: Facts, both: BothFaults, cable: number, end: FedEnd): EndCurrents =>
  isTree(facts.model) ? treeCurrents(facts, both, end) : meshCurrents(facts, both, cable, end);

/** What still flows through a cable's conductor and a device at the lowest, once other devices have opened. */
export function afterOpening(
  facts: Facts,
  { returnOhm }: BothFaults,
  cable: number,
  { far }: FedEnd,
  opened: ReadonlySet<number>,
): ((edge: number) => number) | null {
  const of: NetCase = { extreme: 'lowest', opened };
  const point = faultsOf(facts, of)?.at(far, returnOhm) ?? null;
  return point === null ? null : (edge) => (edge === cable ? amps(point, cable) : amps(point, edge));
}

export interface Prospective extends Span {
  /** Node at which the current is highest, and a share of the way from `a` to `b` at which it is lowest. */
  readonly highestNode: number;
  readonly lowestShare: number;
}

/**
 * Prospective current of a dead short on a cable, by its own places: highest at one of its ends; lowest at one, or where
 * the resistance ahead is greatest between them, when it is fed from both.
 */
export function prospectiveOf(facts: Facts, both: BothFaults, cable: number, ends: readonly FedEnd[]): Prospective {
  const { a = 0, b = 0 } = facts.model.circuit.cables[cable] ?? {};
  const { highest, lowest, returnOhm } = both;
  const [highA, highB] = [faultA(highest, a, 0), faultA(highest, b, 0)];
  const top = { highestA: Math.max(highA, highB), highestNode: highA >= highB ? a : b };
  const [lowA, lowB] = [faultA(lowest, a, returnOhm), faultA(lowest, b, returnOhm)];
  const atEnds = { lowestA: Math.min(lowA, lowB), lowestShare: lowA <= lowB ? 0 : 1 };
  const point = ends.length < 2 ? null : pointAt(both, 'lowest', b);
  const [ohmA, ohmB] = [lowest.ohm[a] ?? null, lowest.ohm[b] ?? null];
  if (point === null || ohmA === null || ohmB === null || !(point.amps > 0)) return { ...top, ...atEnds };
  // along a resistance the one ahead is a parabola: fed through it, and beside it
  const openV = lowest.openVolts[b] ?? 0;
  const backV = point.nodeVolts[a] ?? 0;
  const returnV = point.nodeVolts[returnOf(facts.model).node] ?? 0;
  const mutual = (openV - (backV - returnV)) / point.amps;
  const lengthOhm = cableOhmAt(facts, cable, 'lowest');
  const bend = ohmA + ohmB - 2 * mutual - lengthOhm;
  const slope = 2 * mutual - 2 * ohmA + lengthOhm;
  const share = bend < 0 ? Math.min(1, Math.max(0, -slope / (2 * bend))) : atEnds.lowestShare;
  const ohm = ohmA + slope * share + bend * share ** 2 + returnOhm;
  const lowestA = ohm > 0 ? openV / ohm : 0;
  return lowestA < atEnds.lowestA ? { ...top, lowestA, lowestShare: share } : { ...top, ...atEnds };
}
