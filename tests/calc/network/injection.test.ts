import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';
import { solveByRepetition } from './dense.ts';
import { twoSources } from './nets.ts';

function solved(network: Network): NetworkSolved {
  const result = solveNetwork(network);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

const figures = ({ nodeVolts, resistorAmps, sourceAmps, loadAmps }: NetworkSolved): number[] =>
  [nodeVolts, resistorAmps, sourceAmps, loadAmps].flat();

/** A battery of 12.6 V behind 5 mohm between posts 1 and 0, with a load of 1.26 ohm on them. */
const battery: Network = {
  nodes: 2,
  resistors: [{ a: 1, b: 0, ohm: 1.26 }],
  sources: [{ plus: 1, minus: 0, volts: 12.6, ohm: 0.005 }],
  loads: [],
};

describe('a constant current', () => {
  it('charges a battery behind a resistance, by hand', () => {
    // (12.6 + 90 x 0.005) / (1 + 0.005 / 1.26) V at the posts; the rest of the 90 A goes into the battery.
    const volts = 13.05 / (1 + 0.005 / 1.26);
    const result = solved({ ...battery, injections: [{ from: 0, to: 1, amps: 90 }] });
    expect(result.nodeVolts[1]).toBeCloseTo(volts, 12);
    expect(result.resistorAmps[0]).toBeCloseTo(volts / 1.26, 12);
    expect(result.sourceAmps[0]).toBeCloseTo(volts / 1.26 - 90, 9);
    expect(result.undelivered).toEqual([]);
  });

  it('of the other sign or the other way round is the same thing', () => {
    const one = solved({ ...battery, injections: [{ from: 0, to: 1, amps: -40 }] });
    const other = solved({ ...battery, injections: [{ from: 1, to: 0, amps: 40 }] });
    expect(one).toEqual(other);
    expect(one.nodeVolts[1]).toBeCloseTo(12.4 / (1 + 0.005 / 1.26), 12);
  });

  it('into posts held at a voltage goes into the source, and changes nothing else', () => {
    const held: Network = { ...battery, sources: [{ plus: 1, minus: 0, volts: 12.6, ohm: 0 }] };
    const result = solved({ ...held, injections: [{ from: 0, to: 1, amps: 25 }] });
    expect(result.nodeVolts).toEqual([0, 12.6]);
    expect(result.sourceAmps[0]).toBeCloseTo(10 - 25, 12);
  });

  it('tells its share in elements without resistance', () => {
    const result = solved({
      ...battery,
      nodes: 3,
      resistors: [...battery.resistors, { a: 1, b: 2, ohm: 0 }],
      injections: [{ from: 0, to: 2, amps: 30 }],
    });
    expect(result.resistorAmps[1]).toBeCloseTo(-30, 9);
  });

  it('between two batteries draws from one side and delivers into the other', () => {
    // A charger of 20 A from battery 1 (plus 1) into battery 2 (plus 2), both 12.6 V behind 10 mohm, minus joined.
    const result = solved({
      nodes: 3,
      resistors: [],
      sources: [
        { plus: 1, minus: 0, volts: 12.6, ohm: 0.01 },
        { plus: 2, minus: 0, volts: 12.6, ohm: 0.01 },
      ],
      loads: [],
      injections: [{ from: 1, to: 2, amps: 20 }],
    });
    expect(result.nodeVolts[1]).toBeCloseTo(12.4, 12);
    expect(result.nodeVolts[2]).toBeCloseTo(12.8, 12);
    expect(result.sourceAmps[0]).toBeCloseTo(20, 9);
    expect(result.sourceAmps[1]).toBeCloseTo(-20, 9);
  });

  it('lets a constant-power load have what the cable would not carry alone', () => {
    // Thevenin of 12 V behind 10 mohm with 100 A brought to its end: 13 V behind 10 mohm, 13^2 / 0.04 = 4225 W at most.
    const net = (watts: number): Network => ({
      nodes: 3,
      resistors: [{ a: 1, b: 2, ohm: 0.01 }],
      sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0 }],
      loads: [{ plus: 2, minus: 0, law: { kind: 'power', watts } }],
      injections: [{ from: 0, to: 2, amps: 100 }],
    });
    expect(solved(net(4000)).nodeVolts[2]).toBeCloseTo((13 + Math.sqrt(169 - 160)) / 2, 9);
    const refused = solveNetwork(net(5000));
    if (refused.ok || refused.reason !== 'cannotCarry') throw new Error('carried');
    expect(refused.largestShare * 5000).toBeCloseTo(4225, 0);
  });
});

describe('a constant current without a way', () => {
  const island: Network = {
    ...battery,
    nodes: 5,
    resistors: [...battery.resistors, { a: 2, b: 3, ohm: 0.5 }],
    injections: [
      { from: 2, to: 3, amps: 10 },
      { from: 1, to: 2, amps: 10 },
      { from: 4, to: 0, amps: -3 },
      { from: 0, to: 1, amps: 5 },
      { from: 4, to: 0, amps: 0 },
    ],
  };

  it('is reported, carries nothing, and leaves the rest as it is', () => {
    const result = solved(island);
    expect(result.undelivered).toEqual([0, 1, 2]);
    expect(result.dead).toEqual([2, 3, 4]);
    expect(result.resistorAmps[1]).toBe(0);
    expect(result.nodeVolts.slice(2)).toEqual([0, 0, 0]);
    expect(result.nodeVolts[1]).toBeCloseTo(12.625 / (1 + 0.005 / 1.26), 12);
    expect(figures(result).every(Number.isFinite)).toBe(true);
  });

  it('bridges no two parts that each have a source', () => {
    const result = solved({
      nodes: 4,
      resistors: [],
      sources: [
        { plus: 1, minus: 0, volts: 12, ohm: 0.01 },
        { plus: 3, minus: 2, volts: 24, ohm: 0.01 },
      ],
      loads: [],
      injections: [{ from: 1, to: 3, amps: 10 }],
    });
    expect(result.undelivered).toEqual([0]);
    expect(result.nodeVolts).toEqual([0, 12, 0, 24]);
  });

  it('makes nothing live where there is no source at all', () => {
    const result = solved({ ...battery, sources: [], injections: [{ from: 0, to: 1, amps: 10 }] });
    expect(result.dead).toEqual([0, 1]);
    expect(result.undelivered).toEqual([0]);
    expect(figures(result).every((value) => value === 0)).toBe(true);
  });

  it.each([
    ['a node outside', { from: 0, to: 2, amps: 1 }],
    ['no number', { from: 0, to: 1, amps: Number.NaN }],
    ['an endless current', { from: 0, to: 1, amps: Number.POSITIVE_INFINITY }],
  ])('%s is a programming error', (_name, injection) => {
    expect(() => solveNetwork({ ...battery, injections: [injection] })).toThrow(RangeError);
  });
});

describe('random nets with constant currents', () => {
  const nets = fc
    .tuple(
      twoSources,
      fc.array(fc.tuple(fc.nat(1000), fc.nat(1000), fc.integer({ min: -60, max: 60 })), { maxLength: 4 }),
    )
    .map(([net, raw]): Network => {
      const injections = raw.map(([from, to, amps]) => ({
        from: from % net.nodes,
        to: to % net.nodes,
        amps: amps / 4,
      }));
      return { ...net, injections };
    });

  it('agree with a full matrix and plain repetition', () => {
    let compared = 0;
    fc.assert(
      fc.property(nets, (net) => {
        const other = solveByRepetition(net);
        if (other === null) return;
        compared += 1;
        const { nodeVolts } = solved(net);
        for (const [node, volts] of other.entries()) expect(nodeVolts[node]).toBeCloseTo(volts, 7);
      }),
      { seed: 42, numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(150);
  });
});
