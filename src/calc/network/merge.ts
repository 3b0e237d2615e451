import { add, real, whole } from './arrays.ts';
import type { Network } from './types.ts';
import { UnionFind } from './unionFind.ts';

/** An element without resistance that holds `volts` from minus to plus. */
export interface Rigid {
  readonly element: 'source' | 'resistor';
  readonly index: number;
  readonly plus: number;
  readonly minus: number;
  readonly volts: number;
}

/** Nodes held against one another, each group named by a node of it: volts(node) = volts(group) + offset(node). */
export interface Merged {
  readonly groupOf: Int32Array;
  readonly offset: Float64Array;
  /** The rigid elements that tie each group together, as a tree; any other is redundant and carries nothing. */
  readonly tree: readonly Rigid[];
}

/** Two rigid paths may differ by rounding alone. */
const AGREE_V = 1e-9;

/** From here down an element counts as having no resistance: a millionth of the shortest cable worth drawing. */
const RIGID_OHM = 1e-9;

export const isRigid = (ohm: number): boolean => ohm <= RIGID_OHM;

function rigidElements({ sources, resistors }: Network): Rigid[] {
  const rigid: Rigid[] = [];
  for (const [index, { plus, minus, volts, ohm }] of sources.entries()) {
    if (isRigid(ohm)) rigid.push({ element: 'source', index, plus, minus, volts });
  }
  for (const [index, { a, b, ohm }] of resistors.entries()) {
    if (isRigid(ohm)) rigid.push({ element: 'resistor', index, plus: a, minus: b, volts: 0 });
  }
  return rigid;
}

/** Merges nodes across rigid elements; returns the element that contradicts the rest, if any. */
export function mergeRigid(network: Network): Merged | { readonly conflict: Rigid } {
  const { nodes } = network;
  const ties = new UnionFind(nodes);
  const tree: Rigid[] = [];
  for (const rigid of rigidElements(network)) {
    if (ties.join(rigid.plus, rigid.minus, rigid.volts)) tree.push(rigid);
    else {
      const gap = ties.above(rigid.minus) + rigid.volts - ties.above(rigid.plus);
      if (Math.abs(gap) > AGREE_V) return { conflict: rigid };
    }
  }

  const groupOf = new Int32Array(nodes);
  const offset = new Float64Array(nodes);
  for (let node = 0; node < nodes; node += 1) {
    groupOf[node] = ties.root(node);
    offset[node] = ties.above(node);
  }
  return { groupOf, offset, tree };
}

/**
 * Currents each rigid element of the tree delivers into its plus node, by Kirchhoff's current law from the leaves
 * inwards. `leaving` holds, by node, the current that leaves through every other element; it is used up.
 */
export function rigidAmps(tree: readonly Rigid[], leaving: Float64Array): Float64Array {
  const amps = new Float64Array(tree.length);
  const degree = new Int32Array(leaving.length);
  // the exclusive or of the elements still at a node: at a leaf, that is its one element
  const beside = new Int32Array(leaving.length);
  const count = (node: number, index: number, by: number): void => {
    degree[node] = whole(degree, node) + by;
    beside[node] = whole(beside, node) ^ index;
  };
  for (const [index, { plus, minus }] of tree.entries()) {
    count(plus, index, 1);
    count(minus, index, 1);
  }
  for (const start of tree) {
    for (const end of [start.plus, start.minus]) {
      for (let node = end; whole(degree, node) === 1; ) {
        const index = whole(beside, node);
        const rigid = tree[index] ?? start;
        const far = rigid.plus === node ? rigid.minus : rigid.plus;
        const into = real(leaving, node);
        amps[index] = rigid.plus === node ? into : -into;
        add(leaving, far, into);
        degree[node] = 0;
        count(far, index, -1);
        node = far;
      }
    }
  }
  return amps;
}
