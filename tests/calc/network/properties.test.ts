import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';
import { solveByRepetition } from './dense.ts';
import { surplusAmps } from './kirchhoff.ts';
import { grounded, rings, trees, twoSources } from './nets.ts';

const RUNS = { seed: 41, numRuns: 150 };
/** Full matrices, many times over: slow on a busy machine. */
const FULL = { timeout: 60_000 };

function solved(network: Network): NetworkSolved {
  const result = solveNetwork(network);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

const voltsAcross = ({ nodeVolts }: NetworkSolved, plus: number, minus: number): number =>
  (nodeVolts[plus] ?? Number.NaN) - (nodeVolts[minus] ?? Number.NaN);

describe.each([
  ['trees', trees],
  ['grounds of their own', grounded],
  ['rings', rings],
  ['two sources', twoSources],
])('random nets: %s', (_name, nets) => {
  it("keep Kirchhoff's current law at every node", () => {
    fc.assert(
      fc.property(nets, (net) => {
        for (const amps of surplusAmps(net, solved(net))) expect(Math.abs(amps)).toBeLessThan(1e-8);
      }),
      RUNS,
    );
  });

  it('balance: what the sources give is what loads and resistances take', () => {
    fc.assert(
      fc.property(nets, (net) => {
        const result = solved(net);
        const sum = (values: number[]): number => values.reduce((total, value) => total + value, 0);
        const given = sum(
          net.sources.map(({ volts, ohm }, index) => {
            const amps = result.sourceAmps[index] ?? Number.NaN;
            return volts * amps - amps ** 2 * ohm;
          }),
        );
        const lost = sum(net.resistors.map(({ ohm }, index) => (result.resistorAmps[index] ?? Number.NaN) ** 2 * ohm));
        const used = sum(
          net.loads.map(
            ({ plus, minus }, index) => voltsAcross(result, plus, minus) * (result.loadAmps[index] ?? Number.NaN),
          ),
        );
        expect(given).toBeCloseTo(lost + used, 6);
      }),
      RUNS,
    );
  });

  it('draw at every load what its law says', () => {
    fc.assert(
      fc.property(nets, (net) => {
        const result = solved(net);
        for (const [index, { plus, minus, law }] of net.loads.entries()) {
          const volts = voltsAcross(result, plus, minus);
          const amps = result.loadAmps[index] ?? Number.NaN;
          if (law.kind === 'power') expect(volts * amps).toBeCloseTo(law.watts, 8);
          else expect(amps).toBeCloseTo((law.amps * volts) / law.atVolts, 9);
        }
      }),
      RUNS,
    );
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
      RUNS,
    );
    expect(compared).toBeGreaterThan(RUNS.numRuns * 0.9);
  });
});

describe('branching feeds from one battery', () => {
  it('lose voltage everywhere, or keep it, when one load grows', () => {
    fc.assert(
      fc.property(trees, fc.nat(1000), (net, chosen) => {
        const grown = chosen % net.loads.length;
        const loads = net.loads.map((load, index) =>
          index === grown && load.law.kind === 'power'
            ? { ...load, law: { kind: 'power' as const, watts: load.law.watts + 5 } }
            : load,
        );
        const before = solved(net).nodeVolts;
        const after = solved({ ...net, loads }).nodeVolts;
        for (const [node, volts] of after.entries()) expect(volts).toBeLessThanOrEqual((before[node] ?? 0) + 1e-9);
      }),
      RUNS,
    );
  });

  it('gain voltage everywhere, or keep it, when one cable gets thicker', () => {
    fc.assert(
      fc.property(trees, fc.nat(1000), (mixed, chosen) => {
        // A load in proportion to voltage draws more when its own cable gets thicker, and so pulls its neighbours down.
        const loads = mixed.loads.map((load) => ({ ...load, law: { kind: 'power' as const, watts: 8 } }));
        const net = { ...mixed, loads };
        const thicker = chosen % net.resistors.length;
        const resistors = net.resistors.map((each, index) =>
          index === thicker ? { ...each, ohm: each.ohm / 2 } : each,
        );
        const before = solved(net).nodeVolts;
        const after = solved({ ...net, resistors }).nodeVolts;
        for (const [node, volts] of after.entries()) expect(volts).toBeGreaterThanOrEqual((before[node] ?? 0) - 1e-9);
      }),
      RUNS,
    );
  });
});

describe('loads near and past what the net carries', () => {
  const heavy = fc
    .tuple(fc.oneof(trees, grounded, rings, twoSources), fc.integer({ min: 1, max: 80 }))
    .map(([net, times]) => ({
      ...net,
      loads: net.loads.map((load) => {
        const { law } = load;
        return law.kind === 'power' ? { ...load, law: { kind: law.kind, watts: law.watts * times } } : load;
      }),
    }));

  const scaled = (net: Network, share: number): Network => ({
    ...net,
    loads: net.loads.map((load) => {
      const { law } = load;
      return law.kind === 'power' ? { ...load, law: { kind: law.kind, watts: law.watts * share } } : load;
    }),
  });

  it(
    'are carried wherever plain repetition settles, at the same voltages, and refused only where it does not',
    FULL,
    () => {
      let [carried, refused] = [0, 0];
      fc.assert(
        fc.property(heavy, (net) => {
          const other = solveByRepetition(net);
          const result = solveNetwork(net);
          if (result.ok) carried += 1;
          else refused += 1;
          if (other === null) return;
          expect(result.ok).toBe(true);
          if (!result.ok) return;
          for (const [node, volts] of other.entries()) expect(result.nodeVolts[node]).toBeCloseTo(volts, 6);
        }),
        { seed: 12, numRuns: 300 },
      );
      expect(carried).toBeGreaterThan(50);
      expect(refused).toBeGreaterThan(50);
    },
  );

  it('tell, when refused, the share that is just carried', () => {
    fc.assert(
      fc.property(heavy, (net) => {
        const result = solveNetwork(net);
        if (result.ok || result.reason !== 'cannotCarry') return;
        expect(result.largestShare).toBeGreaterThanOrEqual(0);
        expect(result.largestShare).toBeLessThan(1);
        expect(solveNetwork(scaled(net, result.largestShare * 0.999)).ok).toBe(true);
        expect(solveNetwork(scaled(net, result.largestShare * 1.001)).ok).toBe(false);
      }),
      { seed: 13, numRuns: 200 },
    );
  });
});
