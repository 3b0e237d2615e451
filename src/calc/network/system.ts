import { isRigid, type Merged } from './merge.ts';
import { type Slot, SparseSymmetric } from './sparse.ts';
import type { Network } from './types.ts';

/** One element between two unknowns: the voltage across it is x(first) - x(second) + known, x(-1) being 0. */
export interface Branch {
  readonly kind: 'resistor' | 'source' | 'load';
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly first: number;
  readonly second: number;
  readonly known: number;
  readonly slot: Slot;
  /** Conductance; 0 in a power load. */
  readonly siemens: number;
  /** Power drawn at any voltage; 0 in every other element. */
  readonly watts: number;
}

/** The equations of a net after merging: one unknown per group of nodes that is neither dead nor a reference. */
export interface System {
  readonly matrix: SparseSymmetric;
  readonly linear: readonly Branch[];
  readonly power: readonly Branch[];
  /** By node: its unknown, -1 for a reference, and what to add to the unknown's volts. */
  readonly unknownOf: readonly number[];
  readonly addedVolts: readonly number[];
  readonly dead: readonly number[];
}

interface Element extends Pick<Branch, 'kind' | 'index' | 'from' | 'to' | 'siemens' | 'watts'> {
  readonly powered: boolean;
  readonly emfVolts: number;
}

function elementsOf({ resistors, sources, loads }: Network): Element[] {
  const elements: Element[] = [];
  for (const [index, { a, b, ohm }] of resistors.entries()) {
    if (isRigid(ohm)) continue;
    elements.push({ kind: 'resistor', index, from: a, to: b, siemens: 1 / ohm, watts: 0, powered: false, emfVolts: 0 });
  }
  for (const [index, { plus, minus, volts, ohm }] of sources.entries()) {
    if (isRigid(ohm)) continue;
    elements.push({
      kind: 'source',
      index,
      from: plus,
      to: minus,
      siemens: 1 / ohm,
      watts: 0,
      powered: false,
      emfVolts: volts,
    });
  }
  for (const [index, { plus, minus, law }] of loads.entries()) {
    const powered = law.kind === 'power';
    const siemens = powered ? 0 : law.amps / law.atVolts;
    const watts = powered ? law.watts : 0;
    elements.push({ kind: 'load', index, from: plus, to: minus, siemens, watts, powered, emfVolts: 0 });
  }
  return elements;
}

/** Connected part of each group. Loads do not connect: a part reached only through a load has no way back. */
function partsOf({ resistors, sources }: Network, { groupOf, groups }: Merged): number[] {
  const beside = Array.from({ length: groups }, (): number[] => []);
  const join = (one: number, other: number): void => {
    const [a, b] = [groupOf[one] ?? -1, groupOf[other] ?? -1];
    beside[a]?.push(b);
    beside[b]?.push(a);
  };
  for (const { a, b } of resistors) join(a, b);
  for (const { plus, minus } of sources) join(plus, minus);
  const part = new Array<number>(groups).fill(-1);
  for (let start = 0; start < groups; start += 1) {
    if (part[start] !== -1) continue;
    const stack = [start];
    part[start] = start;
    for (let group = stack.pop(); group !== undefined; group = stack.pop()) {
      for (const next of beside[group] ?? []) {
        if (part[next] !== -1) continue;
        part[next] = start;
        stack.push(next);
      }
    }
  }
  return part;
}

/** Sets up the unknowns and the matrix pattern of a merged net. */
export function buildSystem(network: Network, merged: Merged): System {
  const part = partsOf(network, merged);
  const partOf = (node: number): number => part[merged.groupOf[node] ?? -1] ?? -1;
  const references = new Map<number, { group: number; volts: number }>();
  for (const { minus } of network.sources) {
    if (references.has(partOf(minus))) continue;
    references.set(partOf(minus), { group: merged.groupOf[minus] ?? -1, volts: -(merged.offset[minus] ?? 0) });
  }

  let size = 0;
  const unknowns = part.map((of, group) => {
    const reference = references.get(of);
    if (reference === undefined || reference.group === group) return -1;
    size += 1;
    return size - 1;
  });
  const unknownOf = merged.groupOf.map((group) => unknowns[group] ?? -1);
  const addedVolts = merged.groupOf.map((group, node) => {
    const reference = references.get(part[group] ?? -1);
    return (merged.offset[node] ?? 0) + (reference?.group === group ? reference.volts : 0);
  });
  const alive = (node: number): boolean => references.has(partOf(node));

  const unknownAt = (node: number): number => unknownOf[node] ?? -1;
  const live = elementsOf(network).filter(({ from, to }) => alive(from) && partOf(from) === partOf(to));
  const couplings: [number, number][] = [];
  for (const { from, to } of live) {
    if (unknownAt(from) >= 0 && unknownAt(to) >= 0) couplings.push([unknownAt(from), unknownAt(to)]);
  }
  const matrix = new SparseSymmetric(size, couplings);
  const linear: Branch[] = [];
  const power: Branch[] = [];
  for (const { kind, index, from, to, siemens, watts, powered, emfVolts } of live) {
    const first = unknownAt(from);
    const second = unknownAt(to);
    const known = (addedVolts[from] ?? 0) - (addedVolts[to] ?? 0) - emfVolts;
    const slot = matrix.slot(first, second);
    (powered ? power : linear).push({ kind, index, from, to, first, second, known, slot, siemens, watts });
  }
  const dead = merged.groupOf.flatMap((_, node) => (alive(node) ? [] : [node]));
  return { matrix, linear, power, unknownOf, addedVolts, dead };
}
