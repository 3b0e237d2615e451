import { real, whole } from './arrays.ts';

/** A way that lets at most `capacity` pass from one node to the other; Infinity: without limit. */
export interface FlowEdge {
  readonly from: number;
  readonly to: number;
  readonly capacity: number;
}

export interface FlowNetwork {
  readonly nodes: number;
  readonly edges: readonly FlowEdge[];
  readonly sources: readonly number[];
  readonly sinks: readonly number[];
}

/**
 * A net set up once for many flows: between other nodes, or with a few edges taken out. Every edge is an arc and its
 * way back, side by side, so that arc ^ 1 is the other one; arcs are listed by the node that they leave.
 */
export class FlowNet {
  readonly #nodes: number;
  readonly #to: Int32Array;
  readonly #capacity: Float64Array;
  readonly #room: Float64Array;
  readonly #firstOf: Int32Array;
  readonly #arcs: Int32Array;
  readonly #reachedBy: Int32Array;
  readonly #queue: Int32Array;
  readonly #isSink: Uint8Array;

  constructor(nodes: number, edges: readonly FlowEdge[]) {
    if (edges.some(({ from, to }) => !(from >= 0 && from < nodes && to >= 0 && to < nodes)))
      throw new RangeError('flow: an edge to a node outside the net');
    this.#nodes = nodes;
    this.#to = Int32Array.from(edges.flatMap(({ from, to }) => [to, from]));
    this.#capacity = Float64Array.from(edges.flatMap(({ capacity }) => [capacity, 0]));
    this.#room = new Float64Array(this.#capacity.length);
    this.#firstOf = new Int32Array(nodes + 1);
    for (const { from, to } of edges) {
      for (const node of [from, to]) this.#firstOf[node + 1] = whole(this.#firstOf, node + 1) + 1;
    }
    for (let node = 0; node < nodes; node += 1)
      this.#firstOf[node + 1] = whole(this.#firstOf, node + 1) + whole(this.#firstOf, node);
    this.#arcs = new Int32Array(2 * edges.length);
    const next = this.#firstOf.slice();
    for (const [edge, { from, to }] of edges.entries()) {
      for (const [side, node] of [from, to].entries()) {
        this.#arcs[whole(next, node)] = 2 * edge + side;
        next[node] = whole(next, node) + 1;
      }
    }
    this.#reachedBy = new Int32Array(nodes);
    this.#queue = new Int32Array(nodes);
    this.#isSink = new Uint8Array(nodes);
  }

  /** Reaches out over arcs with more room than `least` by shortest ways; the sink met first, or -1. */
  #reach(sources: readonly number[], least: number): number {
    const [unreached, start] = [-2, -1];
    this.#reachedBy.fill(unreached);
    let [head, tail] = [0, 0];
    for (const node of sources) {
      if (this.#reachedBy[node] !== unreached) continue;
      this.#reachedBy[node] = start;
      this.#queue[tail++] = node;
    }
    while (head < tail) {
      const node = whole(this.#queue, head++);
      if (this.#isSink[node] === 1) return node;
      const end = whole(this.#firstOf, node + 1);
      for (let place = whole(this.#firstOf, node); place < end; place += 1) {
        const arc = whole(this.#arcs, place);
        const far = whole(this.#to, arc);
        if (!(real(this.#room, arc) > least) || this.#reachedBy[far] !== unreached) continue;
        this.#reachedBy[far] = arc;
        this.#queue[tail++] = far;
      }
    }
    return -1;
  }

  /** Sends as much as the way to a sink lets pass, and returns how much. */
  #send(sink: number): number {
    let room = Infinity;
    for (let arc = whole(this.#reachedBy, sink); arc >= 0; arc = whole(this.#reachedBy, whole(this.#to, arc ^ 1)))
      room = Math.min(room, real(this.#room, arc));
    for (let arc = whole(this.#reachedBy, sink); arc >= 0; arc = whole(this.#reachedBy, whole(this.#to, arc ^ 1))) {
      this.#room[arc] = real(this.#room, arc) - room;
      this.#room[arc ^ 1] = real(this.#room, arc ^ 1) + room;
    }
    return room;
  }

  /** Greatest flow from any of the sources to any of the sinks, with some edges taken out; see `maxFlow`. */
  flow(sources: readonly number[], sinks: readonly number[], without: readonly number[] = []): number {
    if ([...sources, ...sinks].some((node) => !(node >= 0 && node < this.#nodes)))
      throw new RangeError('flow: a source or a sink outside the net');
    this.#room.set(this.#capacity);
    for (const edge of without) this.#room[2 * edge] = 0;
    this.#isSink.fill(0);
    for (const node of sinks) this.#isSink[node] = 1;
    // a way on which nothing limits the current
    if (this.#reach(sources, Number.MAX_VALUE) >= 0) return Infinity;
    let total = 0;
    for (let sink = this.#reach(sources, 0); sink >= 0; sink = this.#reach(sources, 0)) total += this.#send(sink);
    return total;
  }
}

/**
 * Greatest flow from any of the sources to any of the sinks, in the unit of the capacities; Infinity when some way
 * has no limit, 0 when there is no way. With fuse ratings as capacities: the largest overload that the fuses
 * together let enter. Shortest augmenting ways (Edmonds and Karp); exact for whole numbers.
 * Two ways of 60 and 80 A into one node give 140.
 */
export function maxFlow({ nodes, edges, sources, sinks }: FlowNetwork): number {
  return new FlowNet(nodes, edges).flow(sources, sinks);
}
