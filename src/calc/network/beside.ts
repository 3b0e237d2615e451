import { whole } from './arrays.ts';

/** Whole numbers in a row that grows. */
export class Row {
  private items = new Int32Array(64);
  length = 0;

  push(item: number): void {
    if (this.length === this.items.length) {
      const wider = new Int32Array(2 * this.length);
      wider.set(this.items);
      this.items = wider;
    }
    this.items[this.length] = item;
    this.length += 1;
  }

  at(index: number): number {
    return whole(this.items, index);
  }

  toArray(): Int32Array {
    return this.items.slice(0, this.length);
  }
}

/** Who is beside whom while elimination goes on: one linked list for each vertex, the eliminated passed over. */
export class Beside {
  readonly degree: Int32Array;
  private readonly head: Int32Array;
  private readonly next = new Row();
  private readonly vertex = new Row();
  /** Pairs seen so far: a hub of thousands is asked as fast as a leaf. */
  private readonly pairs = new Set<number>();

  constructor(private readonly size: number) {
    this.degree = new Int32Array(size);
    this.head = new Int32Array(size).fill(-1);
  }

  private link(from: number, to: number): void {
    this.next.push(whole(this.head, from));
    this.vertex.push(to);
    this.head[from] = this.next.length - 1;
    this.degree[from] = whole(this.degree, from) + 1;
  }

  join(one: number, other: number): void {
    const pair = this.size * Math.min(one, other) + Math.max(one, other);
    if (one === other || this.pairs.has(pair)) return;
    this.pairs.add(pair);
    this.link(one, other);
    this.link(other, one);
  }

  /** Adds to `into` the neighbours of a vertex that are not gone. */
  collect(vertex: number, gone: Uint8Array, into: Row): void {
    for (let at = whole(this.head, vertex); at >= 0; at = this.next.at(at)) {
      const neighbour = this.vertex.at(at);
      if (gone[neighbour] === 0) into.push(neighbour);
    }
  }
}
