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

interface Arc {
  readonly to: number;
  readonly back: number;
  room: number;
}

/** Arcs of the shortest way with room from any source to any sink, last arc first; null when there is none. */
function shortestWay(
  out: readonly (readonly Arc[])[],
  sources: readonly number[],
  sinks: ReadonlySet<number>,
): Arc[] | null {
  const reachedBy = new Map<number, { readonly arc: Arc; readonly from: number } | null>(
    sources.map((node) => [node, null]),
  );
  const queue = [...reachedBy.keys()];
  for (const node of queue) {
    if (sinks.has(node)) {
      const way: Arc[] = [];
      for (let step = reachedBy.get(node); step; step = reachedBy.get(step.from)) way.push(step.arc);
      return way;
    }
    for (const arc of out[node] ?? []) {
      if (arc.room <= 0 || reachedBy.has(arc.to)) continue;
      reachedBy.set(arc.to, { arc, from: node });
      queue.push(arc.to);
    }
  }
  return null;
}

function arcsOf({ nodes, edges }: FlowNetwork): Arc[][] {
  const out = Array.from({ length: nodes }, (): Arc[] => []);
  for (const { from, to, capacity } of edges) {
    const [there, here] = [out[to], out[from]];
    if (there === undefined || here === undefined) throw new RangeError('flow: an edge to a node outside the net');
    if (from === to) continue;
    here.push({ to, back: there.length, room: capacity });
    there.push({ to: from, back: here.length - 1, room: 0 });
  }
  return out;
}

/**
 * Greatest flow from any of the sources to any of the sinks, in the unit of the capacities; Infinity when some way
 * has no limit, 0 when there is no way. With fuse ratings as capacities: the largest overload that the fuses
 * together let enter. Shortest augmenting ways (Edmonds and Karp); exact for whole numbers.
 * Two ways of 60 and 80 A into one node give 140.
 */
export function maxFlow(net: FlowNetwork): number {
  const out = arcsOf(net);
  const sinks = new Set(net.sinks);
  const unlimited = arcsOf({ ...net, edges: net.edges.filter(({ capacity }) => capacity === Infinity) });
  if (shortestWay(unlimited, net.sources, sinks) !== null) return Infinity;
  let total = 0;
  for (let way = shortestWay(out, net.sources, sinks); way !== null; way = shortestWay(out, net.sources, sinks)) {
    const room = Math.min(...way.map((arc) => arc.room));
    for (const arc of way) {
      arc.room -= room;
      const back = out[arc.to]?.[arc.back];
      if (back !== undefined) back.room += room;
    }
    total += room;
  }
  return total;
}
