import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CarryLimit, largestCarriedShare } from '../../../src/calc/network/carry.ts';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network } from '../../../src/calc/network/types.ts';
import { grounded, rings, trees, twoSources } from './nets.ts';
import { portShare, portsOf, portVolts } from './ports.ts';

/** Full matrices, many times over: slow on a busy machine. */
const FULL = { timeout: 60_000 };

const limit = (cutOutV: number, scaled = true): CarryLimit => ({ cutOutV, scaled });

/** A battery held at `volts` between 0 and 1, one cable of `ohm`, one load of `watts` between 2 and 1. */
const feed = (volts: number, ohm: number, watts: number): Network => ({
  nodes: 3,
  resistors: [{ a: 0, b: 2, ohm }],
  sources: [{ plus: 0, minus: 1, volts, ohm: 0 }],
  loads: [{ plus: 2, minus: 1, law: { kind: 'power', watts } }],
});

function share(net: Network, limits: readonly CarryLimit[]): number {
  const result = largestCarriedShare(net, limits);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result.share;
}

describe('one load, by hand', () => {
  it.each([
    ['the net binds: 12^2 / 0.04 W', 12, 5000, 0, 3600 / 5000, 'network'],
    ['below half the voltage a cut-out binds nothing', 12, 5000, 5.9, 3600 / 5000, 'network'],
    ['the cut-out binds: 10.5 x 1.5 / 0.01 W', 12, 5000, 10.5, 1575 / 5000, { load: 0 }],
    ['nothing binds', 12, 1500, 10.5, 1, 'nothing'],
    ['no voltage is enough', 10, 1500, 10.5, 0, { load: 0 }],
  ])('%s', (_name, volts, watts, cutOutV, expected, boundBy) => {
    const result = largestCarriedShare(feed(volts, 0.01, watts), [limit(cutOutV)]);
    expect(result).toMatchObject({ ok: true, boundBy });
    if (result.ok) expect(result.share).toBeCloseTo(expected, 6);
  });

  it('meets the closed form at any figures, from below and within a part in a million', () => {
    const figures = fc.record({
      volts: fc.integer({ min: 90, max: 300 }).map((each) => each / 10),
      ohm: fc.integer({ min: 1, max: 500 }).map((each) => each * 1e-4),
      watts: fc.integer({ min: 1, max: 20 }).map((each) => 4 ** each / 100),
      cutOut: fc.integer({ min: 0, max: 110 }).map((each) => each / 100),
    });
    fc.assert(
      fc.property(figures, ({ volts, ohm, watts, cutOut }) => {
        const cutOutV = cutOut * volts;
        const mostW = cutOut > 0.5 ? ((volts - cutOutV) * cutOutV) / ohm : volts ** 2 / (4 * ohm);
        const expected = Math.max(0, Math.min(1, mostW / watts));
        const found = share(feed(volts, ohm, watts), [limit(cutOutV)]);
        expect(found).toBeLessThanOrEqual(expected * (1 + 1e-9));
        expect(found).toBeGreaterThan(expected * (1 - 1e-6) - 1e-11);
      }),
      { seed: 61, numRuns: 300 },
    );
  });

  it('scales the amps of a load in proportion to voltage', () => {
    // At 11 V across a cable of 0.01 ohm flow 100 A: a conductance of 100 / 11, where the load asks for 300 / 12.
    const net: Network = {
      ...feed(12, 0.01, 0),
      loads: [{ plus: 2, minus: 1, law: { kind: 'current', amps: 300, atVolts: 12 } }],
    };
    expect(share(net, [limit(11)])).toBeCloseTo(100 / 11 / 25, 6);
  });
});

describe('loads outside the share', () => {
  const net: Network = {
    ...feed(12, 0.01, 2000),
    loads: [
      { plus: 2, minus: 1, law: { kind: 'power', watts: 2000 } },
      { plus: 2, minus: 1, law: { kind: 'power', watts: 1000 } },
    ],
  };

  it('stay as they are, and their cut-out counts too', () => {
    expect(share(net, [limit(10.5), limit(0, false)])).toBeCloseTo(575 / 2000, 6);
    expect(largestCarriedShare(net, [limit(0), limit(11.05, false)])).toMatchObject({ boundBy: { load: 1 } });
    expect(share(net, [limit(0), limit(11.05, false)])).toBeCloseTo((11.05 * 95 - 1000) / 2000, 6);
  });

  it('leave to the others what the net carries beyond them', () => {
    // Beside s x 25 S behind 0.01 ohm a load can draw 12^2 / (4 x 0.01 x (1 + 0.25 s)) W, which is 3599 W at this s.
    const loads: Network['loads'] = [
      { plus: 2, minus: 1, law: { kind: 'power', watts: 3599 } },
      { plus: 2, minus: 1, law: { kind: 'current', amps: 300, atVolts: 12 } },
    ];
    expect(share({ ...net, loads }, [limit(0, false), limit(0)])).toBeCloseTo((3600 / 3599 - 1) / 0.25, 8);
  });

  it('that are too much by themselves are a refusal', () => {
    const limits = [limit(0), limit(0, false)];
    const heavy = {
      ...net,
      loads: net.loads.map((load) => ({ ...load, law: { kind: 'power', watts: 4000 } as const })),
    };
    expect(largestCarriedShare(heavy, limits)).toEqual({ ok: false, reason: 'cannotCarry', largestShare: 0 });
  });
});

describe('what else can be asked', () => {
  it('takes a load that stands just at its cut-out as one that works', () => {
    const atPosts: Network = {
      ...feed(12, 0.01, 100),
      loads: [{ plus: 0, minus: 1, law: { kind: 'power', watts: 9 } }],
    };
    expect(largestCarriedShare(atPosts, [limit(12)])).toEqual({ ok: true, share: 1, boundBy: 'nothing' });
  });

  it('passes over dead loads, and answers 1 where there are none', () => {
    const dead: Network = { ...feed(12, 0.01, 100), sources: [] };
    expect(largestCarriedShare(dead, [limit(10)])).toEqual({ ok: true, share: 1, boundBy: 'nothing' });
    expect(largestCarriedShare({ ...dead, loads: [] }, [])).toEqual({ ok: true, share: 1, boundBy: 'nothing' });
    // both ends in one dead part
    const across = { plus: 0, minus: 2, law: { kind: 'power', watts: 100 } } as const;
    expect(largestCarriedShare({ ...dead, loads: [across] }, [limit(10)])).toMatchObject({ share: 1 });
  });

  it('refuses contradicting sources, and limits that are none', () => {
    const net = feed(12, 0, 100);
    const sources = [...net.sources, { plus: 2, minus: 1, volts: 14, ohm: 0 }];
    // the cable without resistance closes the loop
    const conflict = { ok: false, reason: 'sourcesConflict', element: 'resistor', index: 0 };
    expect(largestCarriedShare({ ...net, sources }, [limit(0)])).toEqual(conflict);
    for (const limits of [[], [limit(-1)], [limit(Number.NaN)], [limit(1 / 0)], [limit(0), limit(0)]]) {
      expect(() => largestCarriedShare(net, limits)).toThrow('one limit for each load');
    }
    expect(() => largestCarriedShare(feed(12, -1, 100), [limit(0)])).toThrow('negative or not a number');
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

  it('the cut-outs are kept, and not with more to spare than a part in a million', FULL, () => {
    fc.assert(
      fc.property(any, fc.array(fc.integer({ min: 0, max: 95 }), { minLength: 12, maxLength: 12 }), (raw, shares) => {
        const net = { ...raw, loads: raw.loads.filter(({ law }) => law.kind === 'power') };
        const ports = portsOf(net);
        const watts = wattsOf(net);
        const cutOuts = watts.map((_, load) => ((shares[load] ?? 0) / 100) * (ports.openVolts[load] ?? 0));
        const expected = portShare(ports, watts, 40, (volts) =>
          volts.every((each, load) => each >= (cutOuts[load] ?? 0)),
        );
        const limits = cutOuts.map((each) => limit(each));
        const found = share(scale(net, 40), limits) * 40;
        expect(Math.abs(found - expected)).toBeLessThan(1e-6 * expected);
      }),
      { seed: 63, numRuns: 40 },
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

  it('loads that must be raised together, step by step, are carried, scaled or not', () => {
    const net = lifted(789, 7238);
    const result = solveNetwork(net);
    if (!result.ok) throw new Error(result.reason);
    const ours = net.loads.map(({ plus, minus }) => (result.nodeVolts[plus] ?? 0) - (result.nodeVolts[minus] ?? 0));
    const full = portVolts(portsOf(net), [789, 7238], ours);
    for (const [load, volts] of ours.entries()) expect(volts).toBeCloseTo(full?.[load] ?? Number.NaN, 9);
    for (const scaled of [true, false]) {
      const limits = net.loads.map(() => limit(0, scaled));
      expect(largestCarriedShare(net, limits)).toEqual({ ok: true, share: 1, boundBy: 'nothing' });
    }
  });

  it('a load below its cut-out at no load stops all at nothing, though more would lift it above', () => {
    const result = solveNetwork(lifted(10, 2000));
    if (!result.ok) throw new Error(result.reason);
    expect((result.nodeVolts[3] ?? 0) - (result.nodeVolts[5] ?? 0)).toBeGreaterThan(6);
    const stopped = { ok: true, share: 0, boundBy: { load: 0 } };
    expect(largestCarriedShare(lifted(10, 2000), [limit(6), limit(0)])).toEqual(stopped);
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
