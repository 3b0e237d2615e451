import { add, real, whole } from './arrays.ts';
import { type Merged, rigidAmps } from './merge.ts';
import { branchVolts } from './newton.ts';
import type { Point } from './operating.ts';
import type { Branches, System } from './system.ts';
import type { Network, NetworkSolved } from './types.ts';

/** An unregulated load with less than this share of its amps draws nothing. */
const NO_AMPS = 1e-9;

/** A stretch of a typed list as a plain one. */
function plain(values: Float64Array, from: number, to: number, sign: 1 | -1 = 1): number[] {
  const list = new Array<number>(to - from);
  // no minus zero
  for (let index = from; index < to; index += 1) list[index - from] = sign * real(values, index) + 0;
  return list;
}

/** By node, V; 0 where no source reaches. */
function nodeVoltsOf({ alive, unknownOf, addedVolts }: System, x: Float64Array): number[] {
  const volts = new Array<number>(alive.length).fill(0);
  for (let node = 0; node < alive.length; node += 1) {
    if (alive[node] === 1) volts[node] = real(x, whole(unknownOf, node)) + real(addedVolts, node);
  }
  return volts;
}

/** By element, resistors, sources, loads in turn: the current along it, from plus through it to minus. */
function elementAmps(network: Network, { tree }: Merged, system: System, { x, fed }: Point): Float64Array {
  const { resistors, sources, loads } = network;
  const amps = new Float64Array(resistors.length + sources.length + loads.length);
  const leaving = new Float64Array(network.nodes);
  const carry = ({ element, from, to }: Branches, index: number, through: number): void => {
    amps[whole(element, index)] = through;
    add(leaving, whole(from, index), through);
    add(leaving, whole(to, index), -through);
  };
  const { linear, power, injected } = system;
  for (let index = 0; index < linear.count; index += 1) {
    carry(linear, index, real(linear.amount, index) * branchVolts(linear, index, x));
  }
  for (let index = 0; index < power.count; index += 1) {
    if (fed[index] === 1) carry(power, index, real(power.amount, index) / branchVolts(power, index, x));
  }
  for (const { from, to, amps: through } of injected) {
    add(leaving, from, through);
    add(leaving, to, -through);
  }
  const delivered = rigidAmps(tree, leaving);
  for (const [at, { element, index }] of tree.entries()) {
    amps[element === 'source' ? resistors.length + index : index] = -real(delivered, at);
  }
  return amps;
}

/** What a point means for every node and element. */
export function resultOf(network: Network, merged: Merged, system: System, point: Point): NetworkSolved {
  const { loads } = network;
  const amps = elementAmps(network, merged, system, point);
  const firstSource = network.resistors.length;
  const firstLoad = firstSource + network.sources.length;
  const drawing = new Uint8Array(amps.length);
  for (let index = 0; index < system.power.count; index += 1) {
    drawing[whole(system.power.element, index)] = point.fed[index] ?? 0;
  }
  const unfed = loads.flatMap(({ law }, index) => {
    const element = firstLoad + index;
    const draws = law.kind === 'power' ? drawing[element] === 1 : Math.abs(real(amps, element)) > NO_AMPS * law.amps;
    return draws ? [] : [index];
  });
  const dead: number[] = [];
  for (const [node, alive] of system.alive.entries()) if (alive === 0) dead.push(node);
  return {
    ok: true,
    nodeVolts: nodeVoltsOf(system, point.x),
    dead,
    resistorAmps: plain(amps, 0, firstSource),
    sourceAmps: plain(amps, firstSource, firstLoad, -1),
    loadAmps: plain(amps, firstLoad, amps.length),
    unfed,
    undelivered: system.undelivered,
  };
}
