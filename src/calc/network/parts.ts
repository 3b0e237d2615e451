import { real, whole } from './arrays.ts';
import type { Merged } from './merge.ts';
import type { Network } from './types.ts';
import { UnionFind } from './unionFind.ts';

/** Which nodes share a part, and what each live part's volts are counted from. */
export interface Parts {
  /** By node. */
  readonly part: Int32Array;
  readonly alive: Uint8Array;
  /** By part: the group of its reference, -1 where no source reaches, and the volts of that group. */
  readonly reference: Int32Array;
  readonly referenceVolts: Float64Array;
}

/**
 * Connected parts. Loads and injections do not connect: a part reached only through one has no way back. Each live part
 * counts from the minus post of its first source; the part of `zeroNode`, where it is given, from that node.
 */
export function partsOf(network: Network, { groupOf, offset }: Merged, zeroNode: number | null): Parts {
  const { nodes, resistors, sources } = network;
  const ties = new UnionFind(nodes);
  for (const { a, b } of resistors) ties.join(whole(groupOf, a), whole(groupOf, b));
  for (const { plus, minus } of sources) ties.join(whole(groupOf, plus), whole(groupOf, minus));
  const partOf = (node: number): number => ties.root(whole(groupOf, node));

  const reference = new Int32Array(nodes).fill(-1);
  const referenceVolts = new Float64Array(nodes);
  const countFrom = (node: number): void => {
    reference[partOf(node)] = whole(groupOf, node);
    referenceVolts[partOf(node)] = -real(offset, node);
  };
  for (const { minus } of sources) if (whole(reference, partOf(minus)) < 0) countFrom(minus);
  if (zeroNode !== null && whole(reference, partOf(zeroNode)) >= 0) countFrom(zeroNode);

  const part = new Int32Array(nodes);
  const alive = new Uint8Array(nodes);
  for (let node = 0; node < nodes; node += 1) {
    part[node] = partOf(node);
    alive[node] = whole(reference, whole(part, node)) < 0 ? 0 : 1;
  }
  return { part, alive, reference, referenceVolts };
}
