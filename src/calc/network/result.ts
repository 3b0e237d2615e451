import { add, real, whole } from './arrays.ts';
import { type Merged, rigidAmps } from './merge.ts';
import { branchVolts } from './newton.ts';
import type { Point } from './operating.ts';
import type { Branches, System } from './system.ts';
import type { Network, NetworkSolved } from './types.ts';

/** Volts up to which two nodes agree by rounding alone: no load draws at them. */
const NO_VOLTS = 1e-9;

/** A stretch of a typed list as a plain one. */
function plain(values: Float64Array, from: number, to: number, sign: 1 | -1 = 1): number[] {
  const list = new Array<number>(to - from);
  // no minus zero
  for (let index = from; index < to; index += 1) list[index - from] = sign * real(values, index) + 0;
  return list;
}

/** By node, V; 0 where no source reaches. */
function nodeVoltsOf({ unknownOf, addedVolts }: System, x: Float64Array): number[] {
  const volts = new Array<number>(unknownOf.length);
  for (let node = 0; node < volts.length; node += 1)
    volts[node] = real(x, whole(unknownOf, node)) + real(addedVolts, node);
  return volts;
}

interface Through {
  readonly amps: Float64Array;
  /** Whether there is a voltage across it; always false where no source reaches. */
  readonly live: readonly boolean[];
}

/** By element, resistors, sources, loads in turn: the current along it, from plus through it to minus. */
function throughElements(network: Network, { tree }: Merged, system: System, { x, fed }: Point): Through {
  const { resistors, sources, loads } = network;
  const amps = new Float64Array(resistors.length + sources.length + loads.length);
  const live = new Array<boolean>(amps.length).fill(false);
  const leaving = new Float64Array(network.nodes);
  const carry = ({ element, from, to }: Branches, index: number, through: number): void => {
    amps[whole(element, index)] = through;
    add(leaving, whole(from, index), through);
    add(leaving, whole(to, index), -through);
  };
  const { linear, power, injected } = system;
  for (let index = 0; index < linear.count; index += 1) {
    const volts = branchVolts(linear, index, x);
    carry(linear, index, real(linear.amount, index) * volts);
    live[whole(linear.element, index)] = Math.abs(volts) > NO_VOLTS;
  }
  for (const [index, draws] of fed.entries()) {
    if (draws === 0) continue;
    carry(power, index, real(power.amount, index) / branchVolts(power, index, x));
    live[whole(power.element, index)] = true;
  }
  for (const { from, to, amps: through } of injected) {
    add(leaving, from, through);
    add(leaving, to, -through);
  }
  const delivered = rigidAmps(tree, leaving);
  for (const [at, { element, index }] of tree.entries()) {
    amps[element === 'source' ? resistors.length + index : index] = -real(delivered, at);
  }
  return { amps, live };
}

/** What a point means for every node and element. */
export function resultOf(network: Network, merged: Merged, system: System, point: Point): NetworkSolved {
  const { amps, live } = throughElements(network, merged, system, point);
  const firstSource = network.resistors.length;
  const firstLoad = firstSource + network.sources.length;
  const dead: number[] = [];
  for (const [node, alive] of system.alive.entries()) if (alive === 0) dead.push(node);
  return {
    ok: true,
    nodeVolts: nodeVoltsOf(system, point.x),
    dead,
    resistorAmps: plain(amps, 0, firstSource),
    sourceAmps: plain(amps, firstSource, firstLoad, -1),
    loadAmps: plain(amps, firstLoad, amps.length),
    unfed: live.slice(firstLoad).flatMap((isLive, load) => (isLive ? [] : [load])),
    undelivered: system.undelivered,
  };
}
