import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network } from '../../../src/calc/network/types.ts';
import type { LimitedSource } from '../../../src/calc/supply/limited.ts';
import { type Charger, type SuppliedSolved, solveSupplied } from '../../../src/calc/supply/supplied.ts';
import { grounded, rings, trees, twoSources } from '../network/nets.ts';
import { across, allAgreeing, NEAR_A, NEAR_V, ownOhm } from './agreeing.ts';

const RUNS = { seed: 17, numRuns: process.env.FEEDRUN_LONG === undefined ? 40 : 500 };
const MOST_MS = 300_000;

/** Every load between the feed and the body: there no load lifts the ground of another. */
const onBody = fc.oneof(trees, rings, twoSources);
const nets = fc.oneof(onBody, grounded);

const seeds = (most: number) =>
  fc.array(
    fc.record({
      at: fc.nat(1000),
      volts: fc.constantFrom(11, 12.4, 13.8, 14.2, 14.4),
      ohm: fc.constantFrom(0, 0.0005, 0.005),
      maxA: fc.constantFrom(0, 2, 8, 20, 90, 400),
    }),
    { minLength: 1, maxLength: most },
  );

/** Nodes of the feed side, past the body and the first post; a battery held at node 1 would fix what an alternator there sees. */
const liveNode = ({ nodes, loads }: Network, at: number): number => 2 + (at % Math.min(loads.length, nodes - 2));

function placed(
  net: Network,
  many: readonly (Omit<LimitedSource, 'plus' | 'minus'> & { at: number })[],
): LimitedSource[] {
  return many.map(({ at, ...source }) => ({ ...source, plus: liveNode(net, at), minus: 0 }));
}

const supplied = (most: number, among: fc.Arbitrary<Network> = nets) =>
  fc.tuple(among, seeds(most)).map(([net, many]) => ({ net, limited: placed(net, many) }));

/** How far currents and volts are from the law of a limited source: amps over what is allowed, or volts not held. */
function expectLaw(source: LimitedSource, amps: number, between: number): void {
  const { volts, maxA } = source;
  expect(amps).toBeGreaterThanOrEqual(-NEAR_A);
  expect(amps).toBeLessThanOrEqual(maxA + NEAR_A);
  const inner = between + amps * ownOhm(source);
  if (amps > NEAR_A) expect(inner).toBeLessThan(volts + NEAR_V);
  if (amps < maxA - NEAR_A) expect(inner).toBeGreaterThan(volts - NEAR_V);
}

/** Kirchhoff's current law at every node, the supplied currents included. */
function expectBalance(
  net: Network,
  chargers: readonly Charger[],
  limited: readonly LimitedSource[],
  result: SuppliedSolved,
) {
  const into = new Array<number>(net.nodes).fill(0);
  const flow = (from: number, to: number, amps: number | undefined): void => {
    into[from] = (into[from] ?? 0) - (amps ?? Number.NaN);
    into[to] = (into[to] ?? 0) + (amps ?? Number.NaN);
  };
  for (const [index, { a, b }] of net.resistors.entries()) flow(a, b, result.resistorAmps[index]);
  for (const [index, { plus, minus }] of net.loads.entries()) flow(plus, minus, result.loadAmps[index]);
  for (const [index, { plus, minus }] of net.sources.entries()) flow(minus, plus, result.sourceAmps[index]);
  for (const [index, { plus, minus }] of limited.entries()) flow(minus, plus, result.limited[index]?.amps);
  for (const [index, { input, output }] of chargers.entries()) {
    flow(input.plus, input.minus, result.chargers[index]?.inputAmps);
    flow(output.minus, output.plus, result.chargers[index]?.amps);
  }
  for (const amps of into) expect(Math.abs(amps)).toBeLessThan(1e-6);
}

describe('limited sources in random nets', { timeout: MOST_MS }, () => {
  it('obey their law, and all currents balance, for up to eight of them', () => {
    let refused = 0;
    let saturated = 0;
    fc.assert(
      fc.property(supplied(8), ({ net, limited }) => {
        const result = solveSupplied(net, limited);
        if (!result.ok) {
          refused += 1;
          expect(result.reason).toBe('cannotCarry');
          return;
        }
        for (const [index, source] of limited.entries()) {
          const { amps, volts, state } = result.limited[index] ?? { amps: Number.NaN, volts: Number.NaN };
          expectLaw(source, amps, volts);
          if (state === 'saturated') saturated += 1;
        }
        expectBalance(net, [], limited, result);
      }),
      RUNS,
    );
    // these nets are carried by the battery alone, so that nothing hides behind a refusal
    expect(refused).toBe(0);
    expect(saturated).toBeGreaterThan(RUNS.numRuns / 4);
  });

  it('against every combination of states: the same volts, and only one such solution', () => {
    fc.assert(
      fc.property(supplied(4), ({ net, limited }) => {
        const result = solveSupplied(net, limited);
        if (!result.ok) throw new Error(`refused: ${result.reason}`);
        const agreeing = allAgreeing(net, limited);
        expect(agreeing.length).toBeGreaterThan(0);
        for (const { solved } of agreeing) {
          for (const [node, volts] of solved.nodeVolts.entries()) {
            expect(Math.abs(volts - (result.nodeVolts[node] ?? Number.NaN))).toBeLessThan(1e-5);
          }
        }
      }),
      RUNS,
    );
  });

  it('loads up to beyond what can be carried: refused where no combination agrees, and only there', () => {
    let refused = 0;
    fc.assert(
      fc.property(supplied(3), fc.double({ min: 1, max: 300, noNaN: true }), ({ net, limited }, times) => {
        const loads = net.loads.map(({ plus, minus, law }) =>
          law.kind === 'power'
            ? { plus, minus, law: { kind: 'power' as const, watts: law.watts * times } }
            : { plus, minus, law },
        );
        const heavy = { ...net, loads };
        const result = solveSupplied(heavy, limited);
        const agreeing = allAgreeing(heavy, limited);
        expect(result.ok).toBe(agreeing.length > 0);
        if (!result.ok) {
          refused += 1;
          if (result.reason !== 'cannotCarry') throw new Error(result.reason);
          expect(result.largestShare).toBeGreaterThanOrEqual(0);
          expect(result.largestShare).toBeLessThan(1);
          return;
        }
        // where more than one agrees, none has higher voltages than the one found
        for (const { solved } of agreeing) {
          for (const { plus, minus } of heavy.loads) {
            expect(across(solved, plus, minus)).toBeLessThan(across(result, plus, minus) + 1e-5);
          }
        }
      }),
      RUNS,
    );
    expect(refused).toBeGreaterThan(RUNS.numRuns / 20);
  });

  it('a higher limit never lowers the posts, all being grounded on the body', () => {
    fc.assert(
      fc.property(supplied(3, onBody), fc.nat(2), ({ net, limited }, which) => {
        const before = solveSupplied(net, limited);
        const raised = limited.map((source, index) =>
          index === which % limited.length ? { ...source, maxA: source.maxA * 1.5 + 1 } : source,
        );
        const after = solveSupplied(net, raised);
        if (!before.ok || !after.ok) throw new Error('refused');
        for (const [index, { volts }] of before.limited.entries()) {
          expect(after.limited[index]?.volts).toBeGreaterThan(volts - 1e-6);
        }
      }),
      RUNS,
    );
  });
});

const chargerSeeds = fc.array(
  fc.record({
    from: fc.nat(1000),
    to: fc.nat(1000),
    volts: fc.constantFrom(13.8, 14.4),
    maxA: fc.constantFrom(0, 5, 25),
    efficiency: fc.double({ min: 0.3, max: 0.99, noNaN: true }),
    secondV: fc.double({ min: 11, max: 13, noNaN: true }),
  }),
  { minLength: 1, maxLength: 3 },
);

describe('chargers in random nets', { timeout: MOST_MS }, () => {
  it('draw what they give over their efficiency, obey their law, and all balances', () => {
    fc.assert(
      fc.property(supplied(2), chargerSeeds, ({ net, limited }, many) => {
        // each charger fills a battery on a node of its own, which joins nothing else
        const chargers = many.map(({ from, volts, maxA, efficiency }, index): Charger => {
          const output = { plus: net.nodes + index, minus: 0, volts, ohm: 0.001, maxA };
          return { input: { plus: liveNode(net, from), minus: 0 }, output, efficiency };
        });
        const seconds = many.map(({ secondV }, index) => ({
          plus: net.nodes + index,
          minus: 0,
          volts: secondV,
          ohm: 0.02,
        }));
        const whole = { ...net, nodes: net.nodes + many.length, sources: [...net.sources, ...seconds] };
        const result = solveSupplied(whole, limited, chargers);
        if (!result.ok) {
          expect(result.reason).toBe('cannotCarry');
          return;
        }
        for (const [index, { output, efficiency }] of chargers.entries()) {
          const one = result.chargers[index];
          if (one === undefined) throw new Error('a charger is missing');
          expectLaw(output, one.amps, one.volts);
          expect(one.inputAmps * one.inputVolts * efficiency).toBeCloseTo(one.amps * one.volts, 5);
        }
        for (const [index, source] of limited.entries()) {
          expectLaw(source, result.limited[index]?.amps ?? Number.NaN, result.limited[index]?.volts ?? Number.NaN);
        }
        expectBalance(whole, chargers, limited, result);
      }),
      RUNS,
    );
  });

  it('between any two nodes, in circles too: an answer that obeys the laws, or a refusal; never without end, never NaN', () => {
    let ok = 0;
    fc.assert(
      fc.property(supplied(2), chargerSeeds, ({ net, limited }, many) => {
        const chargers = many.map(({ from, to, volts, maxA, efficiency }): Charger => {
          const output = { plus: liveNode(net, to), minus: 0, volts, ohm: 0.001, maxA };
          return { input: { plus: liveNode(net, from), minus: 0 }, output, efficiency };
        });
        const result = solveSupplied(net, limited, chargers);
        if (!result.ok) return;
        ok += 1;
        for (const volts of result.nodeVolts) expect(Number.isFinite(volts)).toBe(true);
        for (const [index, { output, efficiency }] of chargers.entries()) {
          const one = result.chargers[index];
          if (one === undefined) throw new Error('a charger is missing');
          expectLaw(output, one.amps, one.volts);
          expect(one.inputAmps * one.inputVolts * efficiency).toBeCloseTo(one.amps * one.volts, 4);
        }
        expectBalance(net, chargers, limited, result);
      }),
      RUNS,
    );
    expect(ok).toBeGreaterThan(RUNS.numRuns / 2);
  });
});
