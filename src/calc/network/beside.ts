import { whole } from './arrays.ts';

/** Whole numbers in a row that grows. */
export class Row {
  private items: Int32Array;
  length = 0;

  constructor(room: number) {
    this.items = new Int32Array(Math.max(4, room));
  }

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

/** Pairs of vertices seen so far, by open addressing: a hub of thousands is asked as fast as a leaf. */
class Pairs {
  private low: Int32Array;
  private high: Int32Array;
  private mask: number;
  private count = 0;

  constructor(expected: number) {
    const room = 1 << Math.ceil(Math.log2(2 * expected + 8));
    this.mask = room - 1;
    this.low = new Int32Array(room).fill(-1);
    this.high = new Int32Array(room);
  }

  /** Where a pair is, or the free place where it would go. */
  private place(low: number, high: number): number {
    let at = Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b);
    at = (at ^ (at >>> 15)) & this.mask;
    for (let found = whole(this.low, at); found >= 0; found = whole(this.low, at)) {
      if (found === low && whole(this.high, at) === high) break;
      at = (at + 1) & this.mask;
    }
    return at;
  }

  /** False when the pair is there already. */
  add(one: number, other: number): boolean {
    const low = Math.min(one, other);
    const high = Math.max(one, other);
    const at = this.place(low, high);
    if (whole(this.low, at) >= 0) return false;
    this.low[at] = low;
    this.high[at] = high;
    this.count += 1;
    if (2 * this.count > this.mask) this.widen();
    return true;
  }

  private widen(): void {
    const { low, high } = this;
    this.mask = 2 * this.mask + 1;
    this.low = new Int32Array(this.mask + 1).fill(-1);
    this.high = new Int32Array(this.mask + 1);
    for (let old = 0; old < low.length; old += 1) {
      const first = whole(low, old);
      if (first < 0) continue;
      const at = this.place(first, whole(high, old));
      this.low[at] = first;
      this.high[at] = whole(high, old);
    }
  }
}

/** Who is beside whom while elimination goes on: one linked list for each vertex, the eliminated passed over. */
export class Beside {
  readonly degree: Int32Array;
  private readonly head: Int32Array;
  private readonly next: Row;
  private readonly vertex: Row;
  private readonly pairs: Pairs;

  constructor(size: number, couplings: number) {
    this.degree = new Int32Array(size);
    this.head = new Int32Array(size).fill(-1);
    this.next = new Row(2 * couplings);
    this.vertex = new Row(2 * couplings);
    this.pairs = new Pairs(couplings);
  }

  private link(from: number, to: number): void {
    this.next.push(whole(this.head, from));
    this.vertex.push(to);
    this.head[from] = this.next.length - 1;
    this.degree[from] = whole(this.degree, from) + 1;
  }

  join(one: number, other: number): void {
    if (one === other || !this.pairs.add(one, other)) return;
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
