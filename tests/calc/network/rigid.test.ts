import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSource } from '../../../src/calc/network/types.ts';
import { surplusAmps } from './kirchhoff.ts';

/** Joins one node to an earlier one without resistance: held at a voltage, or outright. */
interface Joint {
  readonly earlier: number;
  readonly isTurned: boolean;
  readonly volts: number | null;
  readonly rank: number;
}

const joint: fc.Arbitrary<Joint> = fc.record({
  earlier: fc.nat(1000),
  isTurned: fc.boolean(),
  volts: fc.option(fc.integer({ min: -3, max: 3 })),
  rank: fc.nat(1000),
});

/** A tree of such elements in any order and either way round, with a load at every node, fed behind 5 mohm at one. */
const treeOf = (joints: readonly Joint[], fedAt: number): Network => {
  const body = joints.length + 1;
  const ends = joints.map(({ earlier, isTurned, volts, rank }, index) => {
    const [near, far] = [earlier % (index + 1), index + 1];
    return { volts, rank, ends: isTurned ? ([far, near] as const) : ([near, far] as const) };
  });
  const inOrder = ends.toSorted((one, other) => one.rank - other.rank);
  const held = inOrder.flatMap(({ volts, ends: [plus, minus] }): NetworkSource[] =>
    volts === null ? [] : [{ plus, minus, volts, ohm: 0 }],
  );
  return {
    nodes: joints.length + 2,
    resistors: inOrder.flatMap(({ volts, ends: [a, b] }) => (volts === null ? [{ a, b, ohm: 0 }] : [])),
    sources: [{ plus: fedAt % body, minus: body, volts: 12, ohm: 0.005 }, ...held],
    loads: Array.from({ length: body }, (_, plus) => ({
      plus,
      minus: body,
      law: { kind: 'current' as const, amps: plus + 1, atVolts: 12 },
    })),
  };
};

describe('a tree of elements without resistance', () => {
  it("keeps Kirchhoff's current law at every node, and every voltage that is held", () => {
    fc.assert(
      fc.property(fc.array(joint, { minLength: 1, maxLength: 9 }), fc.nat(1000), (joints, fedAt) => {
        const net = treeOf(joints, fedAt);
        const result = solveNetwork(net);
        if (!result.ok) throw new Error(result.reason);
        const volts = (node: number): number => result.nodeVolts[node] ?? Number.NaN;
        for (const amps of surplusAmps(net, result)) expect(Math.abs(amps)).toBeLessThan(1e-8);
        for (const { a, b } of net.resistors) expect(volts(a)).toBeCloseTo(volts(b), 12);
        for (const source of net.sources.slice(1))
          expect(volts(source.plus) - volts(source.minus)).toBeCloseTo(source.volts, 12);
      }),
      { seed: 71, numRuns: 300 },
    );
  });
});

describe('two held voltages at one place', () => {
  it('agree up to a billionth of a volt', () => {
    const posts = { plus: 1, minus: 0, ohm: 0 };
    const held = (volts: number): boolean => {
      const sources = [
        { ...posts, volts: 0 },
        { ...posts, volts },
      ];
      return solveNetwork({ nodes: 2, resistors: [], sources, loads: [] }).ok;
    };
    expect([1e-9, 1.1e-9, -1e-9, -1.1e-9].map(held)).toEqual([true, false, true, false]);
  });
});
