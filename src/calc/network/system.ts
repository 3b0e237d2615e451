import { real, whole } from './arrays.ts';
import { Row } from './beside.ts';
import { isRigid, type Merged } from './merge.ts';
import { type Parts, partsOf } from './parts.ts';
import { SparseSymmetric } from './sparse.ts';
import type { Network } from './types.ts';

/**
 * Elements between two unknowns, one place in every list for each. The voltage across one is
 * x(first) - x(second) + known, where x of the last place, the reference's, is 0.
 */
export interface Branches {
  readonly count: number;
  /** Number of the element: resistors first, then sources, then loads. */
  readonly element: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  /** Where the coupling is stamped. */
  readonly entry: Int32Array;
  readonly known: Float64Array;
  /** Conductance; in a power load the watts drawn at any voltage. */
  readonly amount: Float64Array;
}

/** A current of known size from one unknown to another. */
interface Injected {
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly second: number;
  readonly amps: number;
}

/** The equations of a net after merging: one unknown per group of nodes that is neither dead nor a reference. */
export interface System {
  readonly matrix: SparseSymmetric;
  readonly linear: Branches;
  readonly power: Branches;
  readonly injected: readonly Injected[];
  /** Injections without a way for their current. */
  readonly undelivered: readonly number[];
  /** By node: the place of its unknown, the last one for a reference, and what to add to the unknown's volts. */
  readonly unknownOf: Int32Array;
  readonly addedVolts: Float64Array;
  /** By node: 1 where a source reaches it, and which nodes its part has in common with it. */
  readonly alive: Uint8Array;
  readonly part: Int32Array;
}

/** Gathers elements by their nodes; their unknowns are looked up when the order of elimination is known. */
class Gathered {
  count = 0;
  readonly from: Int32Array;
  readonly to: Int32Array;
  private readonly element: Int32Array;
  private readonly emfVolts: Float64Array;
  private readonly amount: Float64Array;

  constructor(room: number) {
    this.from = new Int32Array(room);
    this.to = new Int32Array(room);
    this.element = new Int32Array(room);
    this.emfVolts = new Float64Array(room);
    this.amount = new Float64Array(room);
  }

  put(element: number, from: number, to: number, amount: number, emfVolts: number): void {
    const at = this.count;
    this.element[at] = element;
    this.from[at] = from;
    this.to[at] = to;
    this.amount[at] = amount;
    this.emfVolts[at] = emfVolts;
    this.count += 1;
  }

  placed({ unknownOf, addedVolts }: Pick<System, 'unknownOf' | 'addedVolts'>, matrix: SparseSymmetric): Branches {
    const { count } = this;
    const first = new Int32Array(count);
    const second = new Int32Array(count);
    const entry = new Int32Array(count);
    const known = new Float64Array(count);
    for (let index = 0; index < count; index += 1) {
      const [a, b] = [whole(this.from, index), whole(this.to, index)];
      const [one, other] = [whole(unknownOf, a), whole(unknownOf, b)];
      // across nodes held against one another the voltage is known whole, and no unknown feels the current
      first[index] = one === other ? matrix.size : one;
      second[index] = one === other ? matrix.size : other;
      entry[index] = matrix.entry(one, other);
      known[index] = real(addedVolts, a) - real(addedVolts, b) - real(this.emfVolts, index);
    }
    const cut = <T extends Int32Array | Float64Array>(list: T): T => list.subarray(0, count) as T;
    const { from, to, element, amount } = this;
    return {
      count,
      element: cut(element),
      from: cut(from),
      to: cut(to),
      first,
      second,
      entry,
      known,
      amount: cut(amount),
    };
  }
}

function gather({ resistors, sources, loads }: Network, { part, alive }: Parts): { linear: Gathered; power: Gathered } {
  const linear = new Gathered(resistors.length + sources.length + loads.length);
  const power = new Gathered(loads.length);
  for (const [index, { a, b, ohm }] of resistors.entries()) {
    if (!isRigid(ohm)) linear.put(index, a, b, 1 / ohm, 0);
  }
  for (const [index, { plus, minus, volts, ohm }] of sources.entries()) {
    if (!isRigid(ohm)) linear.put(resistors.length + index, plus, minus, 1 / ohm, volts);
  }
  for (const [index, { plus, minus, law }] of loads.entries()) {
    if (alive[plus] !== 1 || part[plus] !== part[minus]) continue;
    const element = resistors.length + sources.length + index;
    if (law.kind === 'power') power.put(element, plus, minus, law.watts, 0);
    else linear.put(element, plus, minus, law.amps / law.atVolts, 0);
  }
  return { linear, power };
}

/** By group: a number from 0 for each that has an unknown, -1 for references and the dead. */
function numberUnknowns({ groupOf }: Merged, { part, alive, reference }: Parts): { numbers: Int32Array; size: number } {
  const numbers = new Int32Array(groupOf.length).fill(-1);
  let size = 0;
  for (let node = 0; node < part.length; node += 1) {
    const group = whole(groupOf, node);
    if (alive[node] !== 1 || whole(numbers, group) >= 0 || whole(reference, whole(part, node)) === group) continue;
    numbers[group] = size;
    size += 1;
  }
  return { numbers, size };
}

/** The pattern: every two unknowns that an element couples. */
function matrixOf(size: number, unknown: Int32Array, gathered: readonly Gathered[]): SparseSymmetric {
  const [first, second] = [new Row(), new Row()];
  for (const { count, from, to } of gathered) {
    for (let index = 0; index < count; index += 1) {
      const [one, other] = [whole(unknown, whole(from, index)), whole(unknown, whole(to, index))];
      if (one < 0 || other < 0) continue;
      first.push(one);
      second.push(other);
    }
  }
  return new SparseSymmetric(size, first.toArray(), second.toArray());
}

/** Sets up the unknowns and the matrix pattern of a merged net; `zeroNode` as its part's 0 V, if a source reaches it. */
export function buildSystem(network: Network, merged: Merged, zeroNode: number | null = null): System {
  const parts = partsOf(network, merged, zeroNode);
  const { part, alive, reference, referenceVolts } = parts;
  const { numbers, size } = numberUnknowns(merged, parts);
  const unknownOf = new Int32Array(network.nodes);
  const addedVolts = new Float64Array(network.nodes);
  for (let node = 0; node < network.nodes; node += 1) {
    const group = whole(merged.groupOf, node);
    const home = whole(part, node);
    unknownOf[node] = whole(numbers, group);
    addedVolts[node] = real(merged.offset, node) + (whole(reference, home) === group ? real(referenceVolts, home) : 0);
  }
  const { linear, power } = gather(network, parts);
  const matrix = matrixOf(size, unknownOf, [linear, power]);
  for (let node = 0; node < network.nodes; node += 1) {
    const unknown = whole(unknownOf, node);
    unknownOf[node] = unknown < 0 ? size : whole(matrix.place, unknown);
  }

  const injected: Injected[] = [];
  const undelivered: number[] = [];
  for (const [index, { from, to, amps }] of (network.injections ?? []).entries()) {
    if (alive[from] === 1 && part[from] === part[to]) {
      injected.push({ from, to, first: whole(unknownOf, from), second: whole(unknownOf, to), amps });
    } else if (amps !== 0) undelivered.push(index);
  }
  const places = { unknownOf, addedVolts };
  return {
    ...places,
    matrix,
    linear: linear.placed(places, matrix),
    power: power.placed(places, matrix),
    injected,
    undelivered,
    alive,
    part,
  };
}
