import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network } from '../../../src/calc/network/types.ts';
import { grounded, rings, trees, twoSources } from './nets.ts';
import { portShare, portsOf, portVolts } from './ports.ts';

/** Full matrices, many times over: slow on a busy machine. */
const FULL = { timeout: 60_000 };

/** A battery held at `volts` between 0 and 1, one cable of `ohm`, one load of `watts` between 2 and 1. */
const feed = (volts: number, ohm: number, watts: number): Network => ({
  nodes: 3,
  resistors: [{ a: 0, b: 2, ohm }],
  sources: [{ plus: 0, minus: 1, volts, ohm: 0 }],
  loads: [{ plus: 2, minus: 1, law: { kind: 'power', watts } }],
});

/** Largest common share of the loads of constant power, 1 where all are carried. */
function share(net: Network): number {
  const result = solveNetwork(net);
  if (result.ok) return 1;
  if (result.reason !== 'cannotCarry') throw new Error(result.reason);
  return result.largestShare;
}

describe('one load, by hand', () => {
  it('12 V and 0.01 ohm carry 12^2 / 0.04 W', () => {
    expect(share(feed(12, 0.01, 5000))).toBeCloseTo(3600 / 5000, 6);
    expect(share(feed(12, 0.01, 1500))).toBe(1);
  });

  it('meets the closed form at any figures, from below and within a part in a million', () => {
    const figures = fc.record({
      volts: fc.integer({ min: 90, max: 300 }).map((each) => each / 10),
      ohm: fc.integer({ min: 1, max: 500 }).map((each) => each * 1e-4),
      watts: fc.integer({ min: 1, max: 20 }).map((each) => 4 ** each / 100),
    });
    fc.assert(
      fc.property(figures, ({ volts, ohm, watts }) => {
        const expected = Math.min(1, volts ** 2 / (4 * ohm) / watts);
        const found = share(feed(volts, ohm, watts));
        expect(found).toBeLessThanOrEqual(expected * (1 + 1e-9));
        expect(found).toBeGreaterThan(expected * (1 - 1e-6) - 1e-11);
      }),
      { seed: 61, numRuns: 300 },
    );
  });

  it('beside a load in proportion to voltage, which stays as it is', () => {
    // beside 25 S behind 0.01 ohm a load can draw 12^2 / (4 x 0.01 x 1.25) = 2880 W
    const net = feed(12, 0.01, 3599);
    const beside: Network['loads'][number] = { plus: 2, minus: 1, law: { kind: 'current', amps: 300, atVolts: 12 } };
    expect(share({ ...net, loads: [...net.loads, beside] })).toBeCloseTo(2880 / 3599, 7);
  });
});

const wattsOf = ({ loads }: Network): number[] => loads.flatMap(({ law }) => (law.kind === 'power' ? [law.watts] : []));
const scale = (net: Network, by: number): Network => ({
  ...net,
  loads: net.loads.map((load) => {
    const { law } = load;
    return law.kind === 'power' ? { ...load, law: { kind: 'power', watts: law.watts * by } } : load;
  }),
});
const powerLoads = ({ loads }: Network): number[] =>
  loads.flatMap(({ law }, index) => (law.kind === 'power' ? [index] : []));

describe('against the full port equations', () => {
  const any = fc.oneof(trees, grounded, rings, twoSources).filter((net) => wattsOf(net).length > 0);

  it('the net is found to carry what it carries, to a part in a million, and 99.9 % of it is solved', FULL, () => {
    fc.assert(
      fc.property(any, (net) => {
        const ports = portsOf(net);
        const watts = wattsOf(net);
        const capacity = portShare(ports, watts, 1e7);
        const result = solveNetwork(scale(net, capacity * 3));
        if (result.ok || result.reason !== 'cannotCarry') throw new Error('carried more than it can');
        expect(Math.abs(result.largestShare * 3 - 1)).toBeLessThan(2e-7);
        for (const part of [0.5, 0.99, 0.999]) {
          const near = solveNetwork(scale(net, capacity * part));
          if (!near.ok) throw new Error(`refused ${part} of what is carried`);
          const expected = portVolts(
            ports,
            watts.map((each) => each * capacity * part),
            ports.openVolts,
          );
          for (const [port, load] of powerLoads(net).entries()) {
            const { plus = 0, minus = 0 } = net.loads[load] ?? {};
            const volts = (near.nodeVolts[plus] ?? 0) - (near.nodeVolts[minus] ?? 0);
            expect(volts).toBeCloseTo(expected?.[port] ?? Number.NaN, 7);
          }
        }
        expect(solveNetwork(scale(net, capacity * 1.000001)).ok).toBe(false);
      }),
      { seed: 62, numRuns: 15 },
    );
  });
});

describe('where one load raises the voltage of another', () => {
  // 5 V below 42 V: what the upper load draws comes back through the cable between the two, and lifts the lower one's.
  const lifted = (below: number, above: number): Network => ({
    nodes: 6,
    resistors: [
      { a: 2, b: 4, ohm: 0.009 },
      { a: 1, b: 3, ohm: 0.049 },
      { a: 0, b: 5, ohm: 0.003 },
    ],
    sources: [
      { plus: 1, minus: 0, volts: 5, ohm: 0.002 },
      { plus: 2, minus: 1, volts: 42, ohm: 0.001 },
    ],
    loads: [
      { plus: 3, minus: 5, law: { kind: 'power', watts: below } },
      { plus: 4, minus: 3, law: { kind: 'power', watts: above } },
    ],
  });

  it('loads that must be raised together, step by step, are carried', () => {
    const net = lifted(789, 7238);
    const result = solveNetwork(net);
    if (!result.ok) throw new Error(result.reason);
    const ours = net.loads.map(({ plus, minus }) => (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0));
    const full = portVolts(portsOf(net), [789, 7238], ours);
    for (const [load, volts] of ours.entries()) expect(volts).toBeCloseTo(full?.[load] ?? Number.NaN, 9);
  });

  // Two batteries in series with one cable between them and the loads' middle: a 24 V system with 12 V taps.
  const ohm = fc.integer({ min: 1, max: 60 }).map((each) => each * 1e-3);
  const stacked = fc
    .record({
      ohms: fc.tuple(ohm, ohm, ohm, ohm, ohm),
      watts: fc.tuple(
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 900 }),
      ),
    })
    .map(
      ({ ohms, watts }): Network => ({
        nodes: 6,
        resistors: [
          { a: 1, b: 3, ohm: ohms[0] },
          { a: 2, b: 4, ohm: ohms[1] },
          { a: 0, b: 5, ohm: ohms[2] },
        ],
        sources: [
          { plus: 1, minus: 0, volts: 12, ohm: ohms[3] },
          { plus: 2, minus: 1, volts: 12, ohm: ohms[4] },
        ],
        loads: [
          { plus: 3, minus: 5, law: { kind: 'power', watts: watts[0] } },
          { plus: 4, minus: 3, law: { kind: 'power', watts: watts[1] } },
          { plus: 4, minus: 5, law: { kind: 'power', watts: watts[2] } },
        ],
      }),
    );
  const starts = fc.array(
    fc.tuple(fc.double({ min: 1, max: 30 }), fc.double({ min: 1, max: 30 }), fc.double({ min: 1, max: 50 })),
    {
      minLength: 20,
      maxLength: 20,
    },
  );

  it('a stable point is found wherever the full equations have one from any start, and is that one', FULL, () => {
    let [raised, carried, refused] = [0, 0, 0];
    fc.assert(
      fc.property(stacked, starts, (net, from) => {
        const ports = portsOf(net);
        if ((ports.ohm[0]?.[1] ?? 0) < 0) raised += 1;
        const watts = wattsOf(net);
        const found = [ports.openVolts, ...from].flatMap((start) => {
          const volts = portVolts(ports, watts, start);
          return volts === null ? [] : [volts];
        });
        const result = solveNetwork(net);
        expect(result.ok).toBe(found.length > 0);
        if (!result.ok) {
          refused += 1;
          return;
        }
        carried += 1;
        for (const volts of found) {
          for (const [load, { plus, minus }] of net.loads.entries()) {
            const ours = (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0);
            expect(ours).toBeCloseTo(volts[load] ?? Number.NaN, 6);
          }
        }
      }),
      { seed: 64, numRuns: 400 },
    );
    expect(raised).toBeGreaterThan(300);
    expect(carried).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(50);
  });
});
