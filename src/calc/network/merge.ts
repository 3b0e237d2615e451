import { add, real } from './arrays.ts';
import type { Network } from './types.ts';

/** An element without resistance that holds `volts` from minus to plus. */
export interface Rigid {
  readonly element: 'source' | 'resistor';
  readonly index: number;
  readonly plus: number;
  readonly minus: number;
  readonly volts: number;
}

/** Nodes held against one another: volts(node) = volts(group) + offset(node). */
export interface Merged {
  readonly groupOf: readonly number[];
  readonly offset: readonly number[];
  readonly groups: number;
  /** The rigid elements that tie each group together, as a tree; any other is redundant and carries nothing. */
  readonly tree: readonly Rigid[];
}

/** Two rigid paths may differ by rounding alone. */
const AGREE_V = 1e-9;

/** From here down an element counts as having no resistance: a millionth of the shortest cable worth drawing. */
const RIGID_OHM = 1e-9;

export const isRigid = (ohm: number): boolean => ohm <= RIGID_OHM;

function rigidElements({ sources, resistors }: Network): Rigid[] {
  const held = sources.map(({ plus, minus, volts, ohm }, index) => ({
    element: 'source' as const,
    index,
    plus,
    minus,
    volts,
    ohm,
  }));
  const joined = resistors.map(({ a, b, ohm }, index) => ({
    element: 'resistor' as const,
    index,
    plus: a,
    minus: b,
    volts: 0,
    ohm,
  }));
  return [...held, ...joined].filter(({ ohm }) => isRigid(ohm));
}

/** Merges nodes across rigid elements by union-find with potentials; returns the element that contradicts the rest, if any. */
export function mergeRigid(network: Network): Merged | { readonly conflict: Rigid } {
  const parent = Array.from({ length: network.nodes }, (_, node) => node);
  const offset = new Array<number>(network.nodes).fill(0);

  const rootOf = (node: number): { root: number; above: number } => {
    let root = node;
    let above = 0;
    for (let up = parent[root] ?? root; up !== root; up = parent[root] ?? root) {
      above += offset[root] ?? 0;
      root = up;
    }
    parent[node] = root;
    offset[node] = above;
    return { root, above };
  };

  const tree: Rigid[] = [];
  for (const rigid of rigidElements(network)) {
    const plus = rootOf(rigid.plus);
    const minus = rootOf(rigid.minus);
    const gap = minus.above + rigid.volts - plus.above;
    if (plus.root !== minus.root) {
      parent[plus.root] = minus.root;
      offset[plus.root] = gap;
      tree.push(rigid);
    } else if (Math.abs(gap) > AGREE_V) return { conflict: rigid };
  }

  const numberOf = new Map<number, number>();
  const placed = parent.map((_, node) => rootOf(node));
  const groupOf = placed.map(({ root }) => {
    const group = numberOf.get(root) ?? numberOf.size;
    numberOf.set(root, group);
    return group;
  });
  return { groupOf, offset: placed.map(({ above }) => above), groups: numberOf.size, tree };
}

/**
 * Currents each rigid element delivers into its plus node, by Kirchhoff's current law from the leaves inwards.
 * `leaving` holds, by node, the current that leaves through every other element; it is used up.
 */
export function rigidAmps(tree: readonly Rigid[], leaving: Float64Array): Map<Rigid, number> {
  const at = new Map<number, Set<Rigid>>();
  for (const rigid of tree) {
    for (const node of [rigid.plus, rigid.minus]) at.set(node, (at.get(node) ?? new Set()).add(rigid));
  }
  const amps = new Map<Rigid, number>();
  const leaves = [...at.keys()].filter((node) => at.get(node)?.size === 1);
  for (let node = leaves.pop(); node !== undefined; node = leaves.pop()) {
    for (const rigid of at.get(node) ?? []) {
      const far = rigid.plus === node ? rigid.minus : rigid.plus;
      const into = real(leaving, node);
      amps.set(rigid, rigid.plus === node ? into : -into);
      add(leaving, far, into);
      at.get(node)?.delete(rigid);
      at.get(far)?.delete(rigid);
      if (at.get(far)?.size === 1) leaves.push(far);
    }
  }
  return amps;
}
