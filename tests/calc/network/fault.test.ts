import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Faults, faultsTo } from '../../../src/calc/network/fault.ts';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network } from '../../../src/calc/network/types.ts';
import { invert, solveByRepetition } from './dense.ts';
import { grounded, rings, trees, twoSources } from './nets.ts';

const RUNS = { seed: 51, numRuns: 100 };

function faults(network: Network, returnNode: number): Faults {
  const result = faultsTo(network, returnNode);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

const linear = (net: Network): Network => ({ ...net, loads: net.loads.filter(({ law }) => law.kind === 'current') });
const behind = (net: Network, ohm: number): Network => ({
  ...net,
  sources: net.sources.map((source) => ({ ...source, ohm: Math.max(source.ohm, ohm) })),
});

describe('a fault to the body, by hand', () => {
  // Body 0, posts 1, 3 mohm to node 2, 7 mohm on to node 3; the body itself 1 mohm from the minus post 4.
  const feed: Network = {
    nodes: 6,
    resistors: [
      { a: 1, b: 2, ohm: 0.003 },
      { a: 2, b: 3, ohm: 0.007 },
      { a: 0, b: 4, ohm: 0.001 },
    ],
    sources: [{ plus: 1, minus: 4, volts: 12.6, ohm: 0.005 }],
    loads: [{ plus: 3, minus: 0, law: { kind: 'power', watts: 900 } }],
  };

  it('is the voltage over the resistance of the loop', () => {
    const { amps, ohm, openVolts } = faults(feed, 0);
    for (const [node, volts] of [0, 12.6, 12.6, 12.6, 0, 0].entries()) expect(openVolts[node]).toBeCloseTo(volts, 12);
    for (const [node, loop] of [0, 0.006, 0.009, 0.016, 0.001].entries()) expect(ohm[node]).toBeCloseTo(loop, 15);
    expect(amps[2]).toBeCloseTo(1400, 9);
    expect(amps[3]).toBeCloseTo(787.5, 9);
    expect(amps[0]).toBe(0);
    expect(amps[4]).toBeCloseTo(0, 9);
  });

  it('tells where nothing joins node and return', () => {
    const { amps, ohm, sharesOf, at } = faults(feed, 0);
    expect([ohm[5], amps[5], sharesOf(0)?.[5]]).toEqual([null, 0, 0]);
    expect(at(5, 0)).toMatchObject({ amps: 0, sourceAmps: [0] });
    const none = faults(feed, 5);
    expect(none.amps).toEqual([0, 0, 0, 0, 0, 0]);
    expect(none.ohm.every((ohms) => ohms === null)).toBe(true);
  });

  it('tells nothing of a part of its own, though a source reaches it', () => {
    // A second battery on 6 and 7, which nothing joins to the body.
    const apart: Network = {
      ...feed,
      nodes: 8,
      sources: [...feed.sources, { plus: 6, minus: 7, volts: 12.6, ohm: 0.005 }],
    };
    const { amps, ohm, openVolts, sharesOf, at } = faults(apart, 0);
    for (const node of [6, 7]) {
      expect([openVolts[node], ohm[node], amps[node]]).toEqual([0, null, 0]);
      expect(sharesOf(1)?.[node]).toBe(0);
    }
    expect(at(6, 0)).toMatchObject({ amps: 0, sourceAmps: [0, 0] });
    expect(sharesOf(1)?.[2]).toBe(0);
  });

  it('at posts half a millivolt apart has no limit, and none at all where they differ by rounding alone', () => {
    const stack = (volts: number[]): Network => ({
      nodes: 3,
      resistors: [{ a: 1, b: 0, ohm: 1 }],
      sources: [
        { plus: 1, minus: 0, volts: volts[0] ?? 0, ohm: 0 },
        { plus: 1, minus: 2, volts: volts[1] ?? 0, ohm: 0 },
      ],
      loads: [],
    });
    expect(faults(stack([12.0005, 12]), 0).amps[2]).toBeNull();
    expect(faults(stack([0.1 + 0.2, 0.3]), 0).amps[2]).toBe(0);
    // up to a billionth of a volt
    expect([1e-9, 1.1e-9].map((volts) => faults(stack([volts, 0]), 0).amps[1])).toEqual([0, null]);
  });

  it('passes over loads of constant power, which a short starves', () => {
    const amps = (watts: number): (number | null)[] => {
      const [load] = feed.loads;
      const loads = load === undefined ? [] : [{ ...load, law: { kind: 'power', watts } as const }];
      return [...faults({ ...feed, loads }, 0).amps];
    };
    expect(amps(900)).toEqual(amps(0));
    expect(faults(feed, 0).at(2, 0.1)?.nodeVolts).toEqual(faults({ ...feed, loads: [] }, 0).at(2, 0.1)?.nodeVolts);
  });

  it('refuses resistances that cannot be told from one another', () => {
    // A node that a millionth of a millionth of a siemens joins to the rest, beside 1e8 S.
    const apart: Network = {
      ...feed,
      nodes: 8,
      resistors: [...feed.resistors, { a: 2, b: 6, ohm: 1e12 }, { a: 6, b: 7, ohm: 1e-8 }],
    };
    expect(() => faultsTo(apart, 0)).toThrow('too far apart');
    expect(() => solveNetwork(apart)).toThrow('too far apart');
  });

  it('refuses a return or a node outside the net, a source that is none, a resistance that is none', () => {
    for (const amiss of [-1, 6, 0.5, Number.NaN]) expect(() => faultsTo(feed, amiss)).toThrow('return lies outside');
    const { at, sharesOf } = faults(feed, 0);
    for (const amiss of [-1, 6, Number.NaN]) expect(() => at(amiss, 0)).toThrow('node outside the net');
    for (const amiss of [-0.001, Number.NaN]) expect(() => at(2, amiss)).toThrow('negative or not a number');
    for (const amiss of [-1, 1]) expect(() => sharesOf(amiss)).toThrow('no such source');
    const [first] = feed.resistors;
    expect(() => faultsTo({ ...feed, resistors: [{ a: 0, b: 1, ...first, ohm: -1 }] }, 0)).toThrow(RangeError);
  });

  it('goes through the branches of its loop, and through a fault resistance', () => {
    const point = faults(feed, 0).at(2, 0.051);
    expect(point?.amps).toBeCloseTo(210, 9);
    expect(point?.resistorAmps[0]).toBeCloseTo(210, 9);
    expect(point?.resistorAmps[1]).toBeCloseTo(0, 9);
    expect(point?.resistorAmps[2]).toBeCloseTo(210, 9);
    expect(point?.sourceAmps[0]).toBeCloseTo(210, 9);
    expect(point?.nodeVolts[3]).toBeCloseTo(210 * 0.051, 9);
  });

  it('has no limit at posts that hold their voltage, and one as soon as there is a resistance', () => {
    const held: Network = { ...feed, sources: [{ plus: 1, minus: 4, volts: 12.6, ohm: 0 }] };
    const { amps, ohm, at, sharesOf } = faults(held, 4);
    expect([ohm[1], amps[1], at(1, 0), sharesOf(0)]).toEqual([0, null, null, null]);
    expect(amps[2]).toBeCloseTo(4200, 8);
    const point = at(1, 0.1);
    expect(point?.amps).toBeCloseTo(126, 9);
    expect(point?.sourceAmps[0]).toBeCloseTo(126, 9);
    expect(faults(held, 0).amps[1]).toBeCloseTo(12600, 7);
  });

  it('is fed by two batteries, each by its own loop', () => {
    // A second battery of 12.6 V behind 10 mohm on node 3: node 2 sees 5 + 3 mohm beside 10 + 7, and the body's 1 mohm.
    const two: Network = { ...feed, sources: [...feed.sources, { plus: 3, minus: 4, volts: 12.6, ohm: 0.01 }] };
    const { ohm, amps, sharesOf, at } = faults(two, 0);
    const beside = (0.008 * 0.017) / 0.025;
    expect(ohm[2]).toBeCloseTo(beside + 0.001, 15);
    expect(amps[2]).toBeCloseTo(12.6 / (beside + 0.001), 8);
    expect(sharesOf(0)?.[2]).toBeCloseTo(17 / 25, 12);
    expect(sharesOf(1)?.[2]).toBeCloseTo(8 / 25, 12);
    expect(at(2, 0)?.sourceAmps[1]).toBeCloseTo(((amps[2] ?? 0) * 8) / 25, 8);
  });

  it('goes on with a current-limited source beside', () => {
    const { amps, openVolts, at } = faults({ ...feed, injections: [{ from: 4, to: 1, amps: 100 }] }, 0);
    expect(openVolts[1]).toBeCloseTo(13.1, 12);
    expect(amps[2]).toBeCloseTo(13.1 / 0.009, 8);
    expect(at(2, 0)?.sourceAmps[0]).toBeCloseTo(13.1 / 0.009 - 100, 8);
  });

  it('refuses sources that contradict one another, and what no plan can mean', () => {
    const posts = { plus: 1, minus: 0, ohm: 0 };
    const net: Network = {
      nodes: 2,
      resistors: [],
      sources: [
        { ...posts, volts: 12 },
        { ...posts, volts: 14 },
      ],
      loads: [],
    };
    expect(faultsTo(net, 0)).toEqual({ ok: false, reason: 'sourcesConflict', element: 'source', index: 1 });
    for (const node of [-1, 6, 0.5, Number.NaN]) expect(() => faultsTo(feed, node)).toThrow(RangeError);
    const { at, sharesOf } = faults(feed, 0);
    expect(() => at(6, 0)).toThrow(RangeError);
    expect(() => at(1, -1)).toThrow(RangeError);
    expect(() => at(1, Number.NaN)).toThrow(RangeError);
    expect(() => sharesOf(1)).toThrow(RangeError);
  });
});

describe.each([
  ['trees', trees],
  ['grounds of their own', grounded],
  ['rings', rings],
  ['two sources', twoSources],
])('random nets: %s', (_name, nets) => {
  const asked = fc.tuple(nets, fc.nat(1000), fc.nat(1000)).map(([raw, to, at]) => {
    const net = linear(raw);
    return { net, to: to % net.nodes, node: at % net.nodes };
  });

  it('the resistance ahead of every fault is the diagonal of the full inverse', () => {
    fc.assert(
      fc.property(asked, ({ net: raw, to }) => {
        const net = behind(raw, 0.004);
        // Conductances between all nodes but the return.
        const index = (node: number): number => (node < to ? node : node - 1);
        const full = Array.from({ length: net.nodes - 1 }, () => new Array<number>(net.nodes - 1).fill(0));
        const put = (row: number, column: number, value: number): void => {
          const cells = row === to || column === to ? undefined : full[index(row)];
          if (cells !== undefined) cells[index(column)] = (cells[index(column)] ?? 0) + value;
        };
        const conduct = (a: number, b: number, siemens: number): void => {
          for (const [one, other] of [
            [a, b],
            [b, a],
          ] as const) {
            put(one, one, siemens);
            put(one, other, -siemens);
          }
        };
        for (const { a, b, ohm } of net.resistors) conduct(a, b, 1 / ohm);
        for (const { plus, minus, ohm } of net.sources) conduct(plus, minus, 1 / ohm);
        for (const { plus, minus, law } of net.loads) {
          if (law.kind === 'current') conduct(plus, minus, law.amps / law.atVolts);
        }
        const inverse = invert(full);
        const { ohm } = faults(net, to);
        expect(ohm[to]).toBe(0);
        for (let node = 0; node < net.nodes; node += 1) {
          const expected = node === to ? 0 : (inverse?.[index(node)]?.[index(node)] ?? Number.NaN);
          expect(Math.abs((ohm[node] ?? Number.NaN) - expected)).toBeLessThan(1e-9 * expected + 1e-15);
        }
      }),
      RUNS,
    );
  });

  it('a fault is what a full solution of the net with the fault in it gives', () => {
    fc.assert(
      fc.property(asked, fc.constantFrom(0.0005, 0.02, 1), ({ net, to, node }, faultOhm) => {
        const { at } = faults(net, to);
        const other = solveByRepetition({ ...net, resistors: [...net.resistors, { a: node, b: to, ohm: faultOhm }] });
        const point = at(node, faultOhm);
        if (point === null || other === null) throw new Error('no answer');
        // ours counts from the return, the full solution from node 0
        const zero = other[to] ?? Number.NaN;
        for (const [each, volts] of other.entries()) expect(point.nodeVolts[each]).toBeCloseTo(volts - zero, 8);
        expect(point.amps).toBeCloseTo(((other[node] ?? Number.NaN) - zero) / faultOhm, 4);
        for (const [each, { a, b, ohm }] of net.resistors.entries()) {
          expect(point.resistorAmps[each]).toBeCloseTo(((other[a] ?? Number.NaN) - (other[b] ?? Number.NaN)) / ohm, 4);
        }
      }),
      RUNS,
    );
  });

  it('the prospective current is what a fault without resistance draws, and its shares are what each source adds', () => {
    fc.assert(
      fc.property(asked, ({ net, to, node }) => {
        const { at, amps, sharesOf } = faults(net, to);
        const short = solveNetwork({
          ...net,
          resistors: [...net.resistors, { a: node, b: to, ohm: 0 }],
        });
        if (amps[node] === null) {
          expect(short.ok).toBe(false);
          expect(at(node, 0)).toBeNull();
          return;
        }
        if (!short.ok) throw new Error(short.reason);
        const point = at(node, 0);
        const before = solveNetwork(net);
        if (!before.ok) throw new Error(before.reason);
        if (node !== to) expect(short.resistorAmps[net.resistors.length]).toBeCloseTo(amps[node] ?? Number.NaN, 5);
        expect(point?.amps).toBeCloseTo(amps[node] ?? Number.NaN, 5);
        for (const [source, given] of short.sourceAmps.entries()) {
          expect(point?.sourceAmps[source]).toBeCloseTo(given, 5);
          const share = sharesOf(source);
          if (share === null) continue;
          const added = given - (before.sourceAmps[source] ?? Number.NaN);
          expect((share[node] ?? Number.NaN) * (amps[node] ?? Number.NaN)).toBeCloseTo(added, 5);
        }
      }),
      RUNS,
    );
  });
});
