import { real, whole } from './arrays.ts';

/**
 * Disjoint sets of nodes, each set with a level of its own: how far every node stands above its root.
 * The smaller set goes under the larger, so that no way to a root is longer than log2 of the nodes.
 */
export class UnionFind {
  private readonly parent: Int32Array;
  private readonly members: Int32Array;
  private readonly aboveParent: Float64Array;

  constructor(size: number) {
    this.parent = new Int32Array(size);
    for (let node = 0; node < size; node += 1) this.parent[node] = node;
    this.members = new Int32Array(size).fill(1);
    this.aboveParent = new Float64Array(size);
  }

  root(node: number): number {
    let at = node;
    for (let up = whole(this.parent, at); up !== at; up = whole(this.parent, at)) at = up;
    return at;
  }

  /** How far a node stands above its root. */
  above(node: number): number {
    let at = node;
    let height = 0;
    for (let up = whole(this.parent, at); up !== at; up = whole(this.parent, at)) {
      height += real(this.aboveParent, at);
      at = up;
    }
    return height;
  }

  /** Joins two sets so that `one` stands `gap` above `other`. False, and nothing done, when they are one set already. */
  join(one: number, other: number, gap = 0): boolean {
    const [a, b] = [this.root(one), this.root(other)];
    if (a === b) return false;
    const height = this.above(other) + gap - this.above(one);
    const smallerFirst = whole(this.members, a) <= whole(this.members, b);
    const [under, over] = smallerFirst ? [a, b] : [b, a];
    this.parent[under] = over;
    this.aboveParent[under] = smallerFirst ? height : -height;
    this.members[over] = whole(this.members, a) + whole(this.members, b);
    return true;
  }
}
