import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FlowNet, type FlowNetwork, maxFlow } from '../../../src/calc/network/flow.ts';

/** Both directions of one cable. */
const cable = (a: number, b: number, capacity: number) => [
  { from: a, to: b, capacity },
  { from: b, to: a, capacity },
];

/** Least capacity over every way to part the nodes into a source side and a sink side. */
function leastCut({ nodes, edges, sources, sinks }: FlowNetwork): number {
  let least = Number.POSITIVE_INFINITY;
  for (let side = 0; side < 2 ** nodes; side += 1) {
    const inside = (node: number): boolean => ((side >> node) & 1) === 1;
    if (!sources.every(inside) || sinks.some(inside)) continue;
    const crossing = edges.filter(({ from, to }) => inside(from) && !inside(to));
    least = Math.min(
      least,
      crossing.reduce((total, { capacity }) => total + capacity, 0),
    );
  }
  return least;
}

describe('greatest flow', () => {
  it('adds fuses side by side and is bound by the least in line', () => {
    const edges = [...cable(0, 1, 60), ...cable(0, 1, 80), ...cable(1, 2, 150), ...cable(2, 3, 100)];
    expect(maxFlow({ nodes: 4, edges, sources: [0], sinks: [1] })).toBe(140);
    expect(maxFlow({ nodes: 4, edges, sources: [0], sinks: [3] })).toBe(100);
  });

  it('enters a ring from both ways: 100 A and 80 A fuses from two batteries', () => {
    const free = Number.POSITIVE_INFINITY;
    const edges = [
      ...cable(0, 2, 100),
      ...cable(1, 3, 80),
      ...cable(2, 3, free),
      ...cable(3, 4, free),
      ...cable(2, 4, free),
    ];
    expect(maxFlow({ nodes: 5, edges, sources: [0, 1], sinks: [4] })).toBe(180);
    expect(maxFlow({ nodes: 5, edges, sources: [0], sinks: [4] })).toBe(100);
  });

  it('is without limit along a way without a fuse, and nothing without a way', () => {
    const edges = [
      ...cable(0, 1, Number.POSITIVE_INFINITY),
      ...cable(1, 2, Number.POSITIVE_INFINITY),
      ...cable(0, 2, 30),
    ];
    expect(maxFlow({ nodes: 4, edges, sources: [0], sinks: [2] })).toBe(Number.POSITIVE_INFINITY);
    expect(maxFlow({ nodes: 4, edges, sources: [0], sinks: [3] })).toBe(0);
    expect(maxFlow({ nodes: 4, edges, sources: [], sinks: [2] })).toBe(0);
    expect(maxFlow({ nodes: 4, edges, sources: [1], sinks: [1] })).toBe(Number.POSITIVE_INFINITY);
  });

  it('turns back a way taken too early', () => {
    // The shortest way, 0-1-2-3, must give its middle edge back: the best flow goes 0-1-6-7-3 and 0-4-5-2-3.
    const ways = [
      [0, 1, 2, 3],
      [1, 6, 7, 3],
      [0, 4, 5, 2],
    ];
    const edges = ways.flatMap((way) => way.slice(1).map((to, index) => ({ from: way[index] ?? 0, to, capacity: 1 })));
    expect(maxFlow({ nodes: 8, edges, sources: [0], sinks: [3] })).toBe(2);
  });

  it('turns back no more than was sent', () => {
    // 0-1-2-3 sends 1 first; 2-3 lets 9 pass in all, and of what comes by 4 and 5 only that 1 may go on by 1, 6 and 7.
    const way = (nodes: readonly number[], capacity: number) =>
      nodes.slice(1).map((to, index) => ({ from: nodes[index] ?? 0, to, capacity }));
    const edges = [...way([0, 1, 2], 1), ...way([2, 3], 9), ...way([1, 6, 7, 3], 9), ...way([0, 4, 5, 2], 20)];
    expect(maxFlow({ nodes: 8, edges, sources: [0], sinks: [3] })).toBe(10);
  });

  it('equals the least cut on any small net', () => {
    const edge = fc.tuple(
      fc.nat(6),
      fc.nat(6),
      fc.oneof(fc.integer({ min: 0, max: 300 }), fc.constant(Number.POSITIVE_INFINITY)),
    );
    fc.assert(
      fc.property(fc.array(edge, { maxLength: 14 }), fc.boolean(), (raw, second) => {
        const edges = raw.map(([from, to, capacity]) => ({ from, to, capacity }));
        const net = { nodes: 7, edges, sources: second ? [0, 1] : [0], sinks: [6] };
        expect(maxFlow(net)).toBe(leastCut(net));
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('refuses an edge to a node outside the net', () => {
    expect(() => maxFlow({ nodes: 1, edges: cable(0, 1, 5), sources: [0], sinks: [0] })).toThrow('outside the net');
    for (const amiss of [-1, 2, Number.NaN]) {
      expect(() => new FlowNet(2, [{ from: amiss, to: 0, capacity: 5 }])).toThrow('outside the net');
      expect(() => new FlowNet(2, [{ from: 0, to: amiss, capacity: 5 }])).toThrow('outside the net');
    }
  });

  it('refuses a source or a sink outside the net, among others inside it', () => {
    const net = new FlowNet(2, cable(0, 1, 5));
    for (const amiss of [-1, 2, Number.NaN]) {
      expect(() => net.flow([0, amiss], [1])).toThrow('outside the net');
      expect(() => net.flow([0], [1, amiss])).toThrow('outside the net');
    }
  });

  it('counts a source named many times once', () => {
    expect(maxFlow({ nodes: 3, edges: cable(0, 2, 60), sources: [0, 0, 0, 0, 0, 1], sinks: [2] })).toBe(60);
  });

  it('into the first node is as good as into any other', () => {
    const edges = [{ from: 1, to: 0, capacity: 40 }];
    expect(maxFlow({ nodes: 2, edges, sources: [1], sinks: [0] })).toBe(40);
    const free = [{ from: 1, to: 0, capacity: Number.POSITIVE_INFINITY }];
    expect(maxFlow({ nodes: 2, edges: free, sources: [1], sinks: [0] })).toBe(Number.POSITIVE_INFINITY);
  });

  it('of one net asked many times is each time as of a new one, without any edges but those taken out', () => {
    const edges = [...cable(0, 1, 60), ...cable(0, 1, 80), ...cable(1, 2, 100)];
    const net = new FlowNet(3, edges);
    expect(net.flow([0], [2])).toBe(100);
    // The first cable taken out, both ways: edges 0 and 1.
    expect(net.flow([0], [2], [0, 1])).toBe(80);
    expect(net.flow([0], [2], [2])).toBe(60);
    expect(net.flow([0], [2], [0, 2])).toBe(0);
    // What was a sink before is none any more.
    expect(net.flow([0], [1])).toBe(140);
    expect(net.flow([2], [0])).toBe(100);
    expect(net.flow([0], [2])).toBe(100);
  });
});
