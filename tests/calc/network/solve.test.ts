import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';

function solved(network: Network): NetworkSolved {
  const result = solveNetwork(network);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

/** One battery held at its posts (0, 1), one cable of `ohm`, one load of `watts` between 2 and the body 1. */
const feed = (ohm: number, watts: number): Network => ({
  nodes: 3,
  resistors: [{ a: 0, b: 2, ohm }],
  sources: [{ plus: 0, minus: 1, volts: 12, ohm: 0 }],
  loads: [{ plus: 2, minus: 1, law: { kind: 'power', watts } }],
});

describe('one cable, one constant-power load, by hand', () => {
  it.each([
    [0.01, 100],
    [0.01, 1000],
    [0.01, 3500],
    [0.002, 1200],
    [1, 35.9],
  ])('%d ohm, %d W: V = (E + sqrt(E^2 - 4 P R)) / 2', (ohm, watts) => {
    const volts = (12 + Math.sqrt(144 - 4 * watts * ohm)) / 2;
    const result = solved(feed(ohm, watts));
    expect(result.nodeVolts[2]).toBeCloseTo(volts, 8);
    expect(result.loadAmps[0]).toBeCloseTo(watts / volts, 7);
    expect(result.sourceAmps[0]).toBeCloseTo(watts / volts, 7);
  });

  it('carries almost E^2 / 4R = 3600 W and refuses more, telling the share it just carries', () => {
    expect(solveNetwork(feed(0.01, 3599)).ok).toBe(true);
    for (const watts of [3601, 3700, 36000]) {
      const result = solveNetwork(feed(0.01, watts));
      expect(result).toMatchObject({ ok: false, reason: 'cannotCarry' });
      if (!result.ok && result.reason === 'cannotCarry') expect(result.largestShare * watts).toBeCloseTo(3600, 0);
    }
  });

  it('draws nothing for no watts', () => expect(solved(feed(0.01, 0)).loadAmps).toEqual([0]));
});

describe('an unregulated load', () => {
  it('draws in proportion to its voltage', () => {
    // 10 A at 12 V is 1.2 ohm; with 0.3 ohm of cable 12 / 1.5 = 8 A.
    const result = solved({
      ...feed(0.3, 0),
      loads: [{ plus: 2, minus: 1, law: { kind: 'current', amps: 10, atVolts: 12 } }],
    });
    expect(result.loadAmps[0]).toBeCloseTo(8, 9);
    expect(result.nodeVolts[2]).toBeCloseTo(9.6, 9);
  });
});

describe('sources', () => {
  it('behind a resistance share a load by hand', () => {
    // 12.6 V behind 10 mohm beside 12.0 V behind 20 mohm, no load: (12.6 - 12) / 0.03 = 20 A into the second.
    const net: Network = {
      nodes: 2,
      resistors: [],
      sources: [
        { plus: 0, minus: 1, volts: 12.6, ohm: 0.01 },
        { plus: 0, minus: 1, volts: 12, ohm: 0.02 },
      ],
      loads: [],
    };
    const result = solved(net);
    expect(result.sourceAmps[0]).toBeCloseTo(20, 9);
    expect(result.sourceAmps[1]).toBeCloseTo(-20, 9);
    expect(result.nodeVolts[0]).toBeCloseTo(12.4, 12);
  });

  it('held at the posts stand in series', () => {
    const result = solved({
      nodes: 4,
      resistors: [{ a: 3, b: 0, ohm: 2 }],
      sources: [
        { plus: 1, minus: 0, volts: 12, ohm: 0 },
        { plus: 2, minus: 1, volts: 12, ohm: 0 },
        { plus: 3, minus: 2, volts: 0, ohm: 0 },
      ],
      loads: [{ plus: 1, minus: 0, law: { kind: 'current', amps: 6, atVolts: 12 } }],
    });
    expect(result.nodeVolts).toEqual([0, 12, 24, 24]);
    expect(result.resistorAmps[0]).toBeCloseTo(12, 12);
    expect(result.sourceAmps).toEqual([18, 12, 12]);
  });

  it('that contradict one another are refused, and the one that does is named', () => {
    const posts = { plus: 0, minus: 1, ohm: 0 };
    const sources = [
      { ...posts, volts: 12.6 },
      { ...posts, volts: 14.4 },
    ];
    const conflict = { ok: false, reason: 'sourcesConflict' };
    expect(solveNetwork({ nodes: 2, resistors: [], sources, loads: [] })).toEqual({
      ...conflict,
      element: 'source',
      index: 1,
    });
    const shorted: Network = { nodes: 2, resistors: [{ a: 1, b: 0, ohm: 0 }], sources: sources.slice(0, 1), loads: [] };
    expect(solveNetwork(shorted)).toEqual({ ...conflict, element: 'resistor', index: 0 });
    expect(
      solveNetwork({ nodes: 2, resistors: [], sources: [sources[0], sources[0]].flatMap((s) => s ?? []), loads: [] })
        .ok,
    ).toBe(true);
  });
});

describe('elements without resistance', () => {
  it('join their nodes and still tell their current', () => {
    const result = solved({
      nodes: 5,
      resistors: [
        { a: 0, b: 2, ohm: 0 },
        { a: 3, b: 2, ohm: 0 },
        { a: 3, b: 4, ohm: 0.1 },
      ],
      sources: [{ plus: 0, minus: 1, volts: 12, ohm: 0 }],
      loads: [{ plus: 4, minus: 1, law: { kind: 'current', amps: 119, atVolts: 11.9 } }],
    });
    // 12 V over 0.1 + 0.1 ohm.
    expect(result.resistorAmps[0]).toBeCloseTo(60, 9);
    expect(result.resistorAmps[1]).toBeCloseTo(-60, 9);
    expect(result.nodeVolts[3]).toBe(12);
  });
});

describe('elements that count as without resistance', () => {
  it('in a row tell one current, in whatever order they are named', () => {
    // 12 V behind 0.02 ohm on 3, then 3-2-1-4 outright, then 0.12 ohm: 12 / 0.14 A.
    const result = solved({
      nodes: 5,
      resistors: [
        { a: 1, b: 2, ohm: 0 },
        { a: 2, b: 3, ohm: 0 },
        { a: 1, b: 4, ohm: 0 },
      ],
      sources: [{ plus: 3, minus: 0, volts: 12, ohm: 0.02 }],
      loads: [{ plus: 4, minus: 0, law: { kind: 'current', amps: 100, atVolts: 12 } }],
    });
    const amps = 12 / 0.14;
    for (const [index, expected] of [-amps, -amps, amps].entries())
      expect(result.resistorAmps[index]).toBeCloseTo(expected, 9);
  });

  it('are those up to a billionth of an ohm, and two voltages across one are a contradiction', () => {
    const joined = (ohm: number): Network => ({
      nodes: 3,
      resistors: [{ a: 1, b: 2, ohm }],
      sources: [
        { plus: 1, minus: 0, volts: 12, ohm: 0 },
        { plus: 2, minus: 0, volts: 14, ohm: 0 },
      ],
      loads: [],
    });
    for (const ohm of [1e-10, 1e-9]) expect(solveNetwork(joined(ohm))).toMatchObject({ reason: 'sourcesConflict' });
    expect(solved(joined(2e-9)).resistorAmps[0]).toBeCloseTo(-1e9, -1);
  });

  it('contradict one another by half a millivolt, not by rounding', () => {
    const stacked = (volts: number): Network => ({
      nodes: 3,
      resistors: [],
      sources: [
        { plus: 1, minus: 0, volts: 0.1, ohm: 0 },
        { plus: 2, minus: 1, volts: 0.2, ohm: 0 },
        { plus: 2, minus: 0, volts, ohm: 0 },
      ],
      loads: [],
    });
    expect(solveNetwork(stacked(0.3)).ok).toBe(true);
    expect(solveNetwork(stacked(0.3005))).toMatchObject({ reason: 'sourcesConflict', index: 2 });
  });
});

describe('parts without a source', () => {
  const lonely: Network = {
    ...feed(0.01, 500),
    nodes: 6,
    resistors: [
      { a: 0, b: 2, ohm: 0.01 },
      { a: 3, b: 4, ohm: 0.5 },
    ],
    loads: [
      { plus: 2, minus: 1, law: { kind: 'power', watts: 500 } },
      { plus: 3, minus: 4, law: { kind: 'power', watts: 500 } },
      { plus: 2, minus: 5, law: { kind: 'power', watts: 500 } },
      { plus: 2, minus: 2, law: { kind: 'power', watts: 500 } },
      { plus: 2, minus: 5, law: { kind: 'current', amps: 5, atVolts: 12 } },
    ],
  };

  it('are listed as dead, at 0 V, and their loads draw nothing', () => {
    const result = solved(lonely);
    expect(result.dead).toEqual([3, 4, 5]);
    expect([3, 4, 5].map((node) => result.nodeVolts[node])).toEqual([0, 0, 0]);
    expect(result.loadAmps.slice(1)).toEqual([0, 0, 0, 0]);
    expect(result.unfed).toEqual([1, 2, 3, 4]);
    expect(result.nodeVolts[2]).toBeCloseTo((12 + Math.sqrt(144 - 20)) / 2, 9);
  });

  it('never give anything but numbers', () => {
    const result = solved(lonely);
    const figures = [result.nodeVolts, result.resistorAmps, result.sourceAmps, result.loadAmps].flat();
    expect(figures.every(Number.isFinite)).toBe(true);
    expect(solved({ nodes: 2, resistors: [{ a: 0, b: 1, ohm: 1 }], sources: [], loads: [] }).dead).toEqual([0, 1]);
    expect(solved({ nodes: 0, resistors: [], sources: [], loads: [] }).nodeVolts).toEqual([]);
  });

  it('with a source each stand on a reference of their own, and no load bridges them', () => {
    const result = solved({
      nodes: 4,
      resistors: [
        { a: 0, b: 1, ohm: 6 },
        { a: 2, b: 3, ohm: 3 },
      ],
      sources: [
        { plus: 0, minus: 1, volts: 12, ohm: 0 },
        { plus: 3, minus: 2, volts: 24, ohm: 0 },
      ],
      loads: [{ plus: 3, minus: 1, law: { kind: 'power', watts: 100 } }],
    });
    expect(result.nodeVolts).toEqual([12, 0, 0, 24]);
    expect(result.resistorAmps).toEqual([2, -8]);
    expect(result.loadAmps).toEqual([0]);
    expect(result.unfed).toEqual([0]);
  });
});

describe('what no plan can mean', () => {
  it.each([
    ['a node outside', { ...feed(1, 1), nodes: 2 }],
    ['a negative resistance', feed(-1, 1)],
    ['a resistance that is no number', feed(Number.NaN, 1)],
    ['a negative power', feed(1, -1)],
    ['an endless power', feed(1, Number.POSITIVE_INFINITY)],
  ])('%s is a programming error', (_name, net) => {
    expect(() => solveNetwork(net)).toThrow(RangeError);
  });
});

describe('large nets', () => {
  it('a ladder of 5000 loads along one cable solves, and ends where a sweep along it ends', () => {
    const count = 5000;
    const [ohm, watts] = [1e-6, 0.02];
    const net: Network = {
      nodes: count + 2,
      resistors: Array.from({ length: count }, (_, index) => ({ a: index + 1, b: index + 2, ohm })),
      sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0 }],
      loads: Array.from({ length: count }, (_, index) => ({
        plus: index + 2,
        minus: 0,
        law: { kind: 'power', watts },
      })),
    };
    const { nodeVolts } = solved(net);
    // Backward-forward sweep: currents summed from the far end, voltages from the near end, until they settle.
    let volts = new Array<number>(count + 1).fill(12);
    for (let round = 0; round < 60; round += 1) {
      const amps = new Array<number>(count + 1).fill(0);
      for (let at = count - 1; at >= 0; at -= 1) amps[at] = (amps[at + 1] ?? 0) + watts / (volts[at + 1] ?? 0);
      const next = [12];
      for (let at = 0; at < count; at += 1) next.push((next[at] ?? 0) - (amps[at] ?? 0) * ohm);
      volts = next;
    }
    expect(nodeVolts[count + 1]).toBeCloseTo(volts[count] ?? Number.NaN, 7);
  });
});
