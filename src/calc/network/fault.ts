import { add, real, whole } from './arrays.ts';
import { checkNetwork } from './check.ts';
import { isRigid, mergeRigid } from './merge.ts';
import { Equations } from './newton.ts';
import { resultOf } from './result.ts';
import { buildSystem, type System } from './system.ts';
import type { Network, NetworkRefused, NetworkSolved } from './types.ts';

/** Volts up to which two nodes agree by rounding alone. */
const NO_VOLTS = 1e-9;

/** The net while one node is joined to the return by a fault. */
export interface FaultPoint extends Pick<NetworkSolved, 'nodeVolts' | 'resistorAmps' | 'sourceAmps'> {
  /** Through the fault, from the node to the return, A. */
  readonly amps: number;
}

/** Short circuits between each node and one return, as the sources see them. */
export interface Faults {
  readonly ok: true;
  /** By node, V against the return with no fault; 0 where nothing joins the two. */
  readonly openVolts: readonly number[];
  /** By node, resistance that a fault there finds ahead of it, ohm; 0 where a source is held at its posts, null where nothing joins node and return. */
  readonly ohm: readonly (number | null)[];
  /** By node, prospective current of a fault without resistance, A, positive out of the node: openVolts / ohm. Null where it has no limit, 0 where nothing joins node and return. */
  readonly amps: readonly (number | null)[];
  /**
   * By node, the part of a fault's current there that comes out of one source, on top of what that source gave before;
   * null for a source held at its posts. Costs one solve for all the nodes.
   */
  readonly sharesOf: (source: number) => readonly number[] | null;
  /** Everything during a fault of `faultOhm` at a node; null where its current has no limit. Costs one solve. */
  readonly at: (node: number, faultOhm: number) => FaultPoint | null;
}

type SourcesConflict = Extract<NetworkRefused, { reason: 'sourcesConflict' }>;

/** Volts that one ampere changes, by place: drawn out of `from` and delivered into `to`. */
function perAmp({ matrix, unknownOf }: System, from: number, to: number): Float64Array {
  const x = new Float64Array(matrix.size + 1);
  add(x, whole(unknownOf, from), -1);
  add(x, whole(unknownOf, to), 1);
  matrix.solve(x);
  return x;
}

/**
 * Prospective short-circuit currents from every node of a net to `returnNode` (the body), all at once: sources as they
 * stand, behind their resistance; loads in proportion to voltage count as resistances, those of constant power are left
 * out; injections go on. One factorisation and one pass backwards over it, not a solve for each node.
 * V, A, ohm. Refuses sources that contradict one another.
 * 12.6 V behind 5 mohm, 3 mohm of cable to a node, 1 mohm of body: 12.6 / 0.009 = 1400 A there.
 */
export function faultsTo(network: Network, returnNode: number): Faults | SourcesConflict {
  checkNetwork(network);
  if (!Number.isInteger(returnNode) || returnNode < 0 || returnNode >= network.nodes)
    throw new RangeError('fault: the return lies outside the net');
  const merged = mergeRigid(network);
  if ('conflict' in merged) {
    const { element, index } = merged.conflict;
    return { ok: false, reason: 'sourcesConflict', element, index };
  }
  const system = buildSystem(network, merged, returnNode);
  const { matrix, unknownOf, alive, part } = system;
  const open = new Equations(system).withoutPower();
  if (open === null) throw new RangeError('network: resistances too far apart to be told from one another');
  const fed = new Uint8Array(system.power.count);
  const before = resultOf(network, merged, system, { x: open, fed });
  const inverse = matrix.inverseDiagonal();

  const joined = (node: number): boolean => alive[node] === 1 && part[node] === part[returnNode];
  const openVolts = before.nodeVolts.map((volts, node) => (joined(node) ? volts : 0));
  const ohm = openVolts.map((_, node) => (joined(node) ? real(inverse, whole(unknownOf, node)) : null));
  const current = (volts: number, ohms: number | null): number | null => {
    if (ohms === null || Math.abs(volts) <= NO_VOLTS) return 0;
    return ohms === 0 ? null : volts / ohms;
  };

  const at = (node: number, faultOhm: number): FaultPoint | null => {
    if (!(faultOhm >= 0)) throw new RangeError('fault: a resistance that is negative or not a number');
    const ahead = ohm[node];
    if (ahead === undefined) throw new RangeError('fault: a node outside the net');
    const amps = current(openVolts[node] ?? 0, ahead === null ? null : ahead + faultOhm);
    if (amps === null) return null;
    const x = perAmp(system, node, returnNode);
    for (let index = 0; index < x.length; index += 1) x[index] = real(open, index) + amps * real(x, index);
    const first = whole(unknownOf, node);
    const second = whole(unknownOf, returnNode);
    const fault = { from: node, to: returnNode, first, second, amps };
    const during = { ...system, injected: [...system.injected, fault] };
    const { nodeVolts, resistorAmps, sourceAmps } = resultOf(network, merged, during, { x, fed });
    return { amps, nodeVolts, resistorAmps, sourceAmps };
  };

  const sharesOf = (source: number): readonly number[] | null => {
    const one = network.sources[source];
    if (one === undefined) throw new RangeError('fault: no such source');
    if (isRigid(one.ohm)) return null;
    const x = perAmp(system, one.minus, one.plus);
    return openVolts.map((_, node) => (joined(node) ? real(x, whole(unknownOf, node)) / one.ohm : 0));
  };
  return {
    ok: true,
    openVolts,
    ohm,
    amps: openVolts.map((volts, node) => current(volts, ohm[node] ?? null)),
    sharesOf,
    at,
  };
}
