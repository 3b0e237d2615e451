import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Network, NetworkLoad } from '../../../src/calc/network/types.ts';
import { findStates, type StatesFound } from '../../../src/calc/supply/activeSet.ts';
import type { LimitedSource } from '../../../src/calc/supply/limited.ts';
import { across, allAgreeing } from './agreeing.ts';

const onBody = (volts: number, ohm: number, maxA: number, plus = 1): LimitedSource => ({
  plus,
  minus: 0,
  volts,
  ohm,
  maxA,
});

const drawing = (watts: number, plus = 1): NetworkLoad => ({ plus, minus: 0, law: { kind: 'power', watts } });
const resistive = (ohm: number, plus = 1): NetworkLoad => ({
  plus,
  minus: 0,
  law: { kind: 'current', amps: 12 / ohm, atVolts: 12 },
});

/** One post and the body, nothing that holds a voltage. */
const bare = (...loads: NetworkLoad[]): Network => ({ nodes: 2, resistors: [], sources: [], loads });

const statesOf = (found: StatesFound): string => (found.ok ? found.states.join() : `none`);

describe('without a battery, by hand', () => {
  const volts = [13.8, 14.4, 13.6, 14];
  const orders = [volts, [14.4, 14.2, 14, 13.8], [13.8, 14, 14.2, 14.4], [14.2, 13.6, 14.4, 14]];
  it.each([
    // 14.4 V over 10 ohm: 1.44 A
    [10, 1],
    // the highest gives its 60 A, and the next the rest of some 14 / 0.2 = 70 A
    [0.2, 2],
    // 14 / 0.1 = 140 A
    [0.1, 3],
  ])('four chargers of 60 A on one post and %f ohm: the %i highest of them work, in any order', (ohm, working) => {
    for (const order of orders) {
      const found = findStates(
        bare(resistive(ohm)),
        order.map((each) => onBody(each, 1e-7, 60)),
      );
      const ranked = [...order].sort((one, other) => other - one);
      const expected = order.map((each) => {
        const rank = ranked.indexOf(each) + 1;
        if (rank > working) return 'off';
        return rank === working ? 'holding' : 'saturated';
      });
      expect(statesOf(found)).toBe(expected.join());
    }
  });
});

it('without a battery, of two answers the higher: 700 W are 29 A of the 50 A at 24 V, 64 A of twice 50 A at 11 V', () => {
  const found = findStates(bare(drawing(700)), [onBody(11, 1e-7, 50), onBody(24, 1e-7, 50), onBody(11, 1e-7, 2)]);
  expect(statesOf(found)).toBe('off,holding,off');
});

describe('answers that no change of states leads to', () => {
  it('by hand: battery 12 V, 14 and 13 V, all of 0.1 ohm, and 10 A: 1000 W at 10 V', () => {
    // 20 A, 40 A and 30 A at 10 V, and the 10 A of the fourth: 100 A
    const net: Network = {
      ...bare(drawing(300), drawing(700)),
      sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0.1 }],
    };
    const found = findStates(net, [onBody(14, 0.1, 100), onBody(13, 0.1, 400), onBody(24, 0.1, 10)]);
    expect(statesOf(found)).toBe('holding,holding,saturated');
    expect(found.ok && found.solved.nodeVolts[1]).toBeCloseTo(10, 9);
  });

  it('by hand: 1500 W and 0.1 ohm at 12 V, 50 A from the source of 13 V; another by itself holds its own', () => {
    // 125 A and 120 A, of which 195 A are left to the one of 12 V
    const net: Network = { ...bare(drawing(1500, 2), resistive(0.1, 2)), nodes: 3 };
    const found = findStates(net, [onBody(13, 1e-7, 50, 2), onBody(12, 1e-7, 400, 2), onBody(13, 0.01, 50)]);
    expect(statesOf(found)).toBe('saturated,holding,holding');
    expect(found.ok && found.solved.nodeVolts[2]).toBeCloseTo(12, 3);
  });
});

describe('without trying every combination, by hand', () => {
  const quick = (network: Network, limited: readonly LimitedSource[]): StatesFound =>
    findStates(network, limited, { thorough: false });
  const battery = { plus: 1, minus: 0, volts: 12, ohm: 0.1 };

  it('one state at a time where all at once lead nowhere: twice 12 V and 0.1 ohm, 2 A, and 700 W', () => {
    const found = quick({ ...bare(drawing(700)), sources: [battery] }, [onBody(12, 0.1, 400), onBody(14, 0.01, 2)]);
    expect(statesOf(found)).toBe('holding,saturated');
    // 12 V + 2 A x 0.05 ohm behind 0.05 ohm
    const volts = (12.1 + Math.sqrt(12.1 ** 2 - 4 * 700 * 0.05)) / 2;
    expect(found.ok && found.solved.nodeVolts[1]).toBeCloseTo(volts, 9);
  });

  it('the same in any order of three: 13 V over 0.1 ohm and into the battery are 140 A, of which 50 A from 24 V', () => {
    const three = [
      [onBody(24, 1e-7, 50), 'saturated'],
      [onBody(13, 1e-7, 400), 'holding'],
      [onBody(12, 1e-7, 400), 'off'],
    ] as const;
    for (const order of [
      [0, 1, 2],
      [0, 2, 1],
      [1, 0, 2],
      [1, 2, 0],
      [2, 0, 1],
      [2, 1, 0],
    ]) {
      const some = order.flatMap((at) => three.slice(at, at + 1));
      const found = quick(
        { ...bare(resistive(0.1)), sources: [battery] },
        some.map(([source]) => source),
      );
      expect(statesOf(found)).toBe(some.map(([, state]) => state).join());
    }
  });

  it('from all holding: 800 W at 8 V are 40 A of the battery, 10 A, and 50 A from 13 V', () => {
    const net: Network = { ...bare(drawing(800)), sources: [battery] };
    const found = quick(net, [onBody(14, 1e-7, 10), onBody(13, 0.1, 400)]);
    expect(statesOf(found)).toBe('saturated,holding');
    expect(found.ok && found.solved.nodeVolts[1]).toBeCloseTo(8, 9);
  });

  it('an overload that one way met is told, though another met none', () => {
    // node 2 has 100 A at most, and (13 - V) / 1 ohm below 13 V: V (113 - V) is 1300 W at 13 V, and less below
    const resistors = [
      { a: 1, b: 2, ohm: 1 },
      { a: 2, b: 3, ohm: 0.1 },
    ];
    const net: Network = { nodes: 4, resistors, sources: [], loads: [drawing(700, 2), drawing(700, 2)] };
    const four = [onBody(13, 1e-7, 50, 2), onBody(11, 0.01, 400), onBody(13, 1e-7, 2), onBody(14, 0.01, 50, 2)];
    expect(allAgreeing(net, four)).toEqual([]);
    expect(quick(net, four)).toMatchObject({ ok: false, refused: { reason: 'cannotCarry' }, triedAll: false });
  });

  it('sources that contradict one another are told as such', () => {
    const posts = { plus: 1, minus: 0, ohm: 0 };
    const sources = [
      { ...posts, volts: 12 },
      { ...posts, volts: 13 },
    ];
    const refused = { ok: false, reason: 'sourcesConflict', element: 'source', index: 1 };
    expect(findStates({ ...bare(), sources }, [onBody(14, 0.01, 50)])).toMatchObject({ ok: false, refused });
  });
});

describe('where no states agree', () => {
  // 1500 W behind more than the net can bring; each way comes back to where it was
  const heavy: Network = {
    nodes: 3,
    resistors: [
      { a: 1, b: 0, ohm: 0.1 },
      { a: 2, b: 0, ohm: 1 },
    ],
    sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0.1 }],
    loads: [drawing(1500, 2)],
  };

  it('tells that every combination was tried for three, and not for four', () => {
    const three = [onBody(12, 0.1, 100), onBody(11, 1e-7, 100, 2), onBody(13, 0.1, 400)];
    expect(allAgreeing(heavy, three)).toEqual([]);
    expect(findStates(heavy, three)).toEqual({ ok: false, refused: null, triedAll: true });
    expect(findStates(heavy, three, { thorough: false })).toEqual({ ok: false, refused: null, triedAll: false });
    // one more, which fills a battery of its own
    const second = { plus: 3, minus: 0, volts: 12, ohm: 0.1 };
    const net: Network = { ...heavy, nodes: 4, sources: [...heavy.sources, second] };
    const four = [...three, onBody(14, 0.01, 100, 3)];
    expect(findStates(net, four)).toEqual({ ok: false, refused: null, triedAll: false });
    // a current of the net's own without a way is no overload of theirs
    const beside: Network = { ...net, nodes: 5, injections: [{ from: 0, to: 4, amps: 1 }] };
    expect(findStates(beside, four)).toEqual({ ok: false, refused: null, triedAll: false });
  });

  it('tells an overload of the first alone, the others filling batteries within their limits', () => {
    // 144 A of 50 A again; each of the others brings 24 A into a battery of 12 V and 0.1 ohm
    const nodes = [2, 3, 4];
    const sources = nodes.map((plus) => ({ plus, minus: 0, volts: 12, ohm: 0.1 }));
    const net: Network = { nodes: 5, resistors: [], sources, loads: [resistive(0.1)] };
    const four = [1, ...nodes].map((plus) => onBody(14.4, 1e-7, 50, plus));
    const refused = { ok: false, reason: 'cannotCarry', largestShare: 0 };
    expect(findStates(net, four)).toEqual({ ok: false, refused, triedAll: false });
  });

  it('tells an overload where one of four by themselves has more than its limit to bring', () => {
    // 14.4 V over 0.1 ohm: 144 A of 50 A; the others 14.4 A
    const nodes = [1, 2, 3, 4];
    const loads = nodes.map((plus) => resistive(plus === 1 ? 0.1 : 1, plus));
    const net: Network = { nodes: 6, resistors: [], sources: [], loads };
    const four = nodes.map((plus) => onBody(14.4, 1e-7, 50, plus));
    const overload = { ok: false, refused: { ok: false, reason: 'cannotCarry', largestShare: 0 } };
    expect(findStates(net, four)).toMatchObject(overload);
    // beside a current that was to flow into a dead node anyway
    const beside: Network = { ...net, injections: [{ from: 0, to: 5, amps: 1 }] };
    expect(findStates(beside, four)).toMatchObject(overload);
  });
});

describe('a source at its limit to the last digit', () => {
  it.each([3, 7, 11, 13, 30, 55, 110])('%i A drawn of %i A is held', (amps) => {
    const postV = 14.4 - amps * 0.01;
    const load: NetworkLoad = { plus: 1, minus: 0, law: { kind: 'current', amps, atVolts: postV } };
    expect(statesOf(findStates(bare(load), [onBody(14.4, 0.01, amps)]))).toBe('holding');
  });
});

/** Nets in which what holds is not there at once: few nodes, at most one battery, sources of any voltage and limit. */
const awkward = fc
  .record({
    battery: fc.constantFrom(null, 0, 0.01, 0.1),
    ohms: fc.array(fc.constantFrom(0.01, 0.1, 1), { minLength: 0, maxLength: 2 }),
    loads: fc.array(
      fc.record({ at: fc.nat(2), load: fc.constantFrom(drawing(100), drawing(700), resistive(1), resistive(0.1)) }),
      { maxLength: 2 },
    ),
    limited: fc.array(
      fc.record({
        at: fc.nat(2),
        volts: fc.constantFrom(11, 12, 13, 14, 24),
        ohm: fc.constantFrom(1e-7, 0.01, 0.1),
        maxA: fc.constantFrom(2, 10, 50, 100, 400),
      }),
      { minLength: 2, maxLength: 3 },
    ),
  })
  .map(({ battery, ohms, loads, limited }): { network: Network; limited: LimitedSource[] } => {
    const nodes = 2 + ohms.length;
    const node = (at: number): number => 1 + (at % (nodes - 1));
    return {
      network: {
        nodes,
        resistors: ohms.map((ohm, index) => ({ a: index + 1, b: index + 2, ohm })),
        sources: battery === null ? [] : [{ plus: 1, minus: 0, volts: 12, ohm: battery }],
        loads: loads.map(({ at, load }) => ({ ...load, plus: node(at) })),
      },
      limited: limited.map(({ at, ...source }) => ({ ...source, plus: node(at), minus: 0 })),
    };
  });

describe('states of limited sources against every combination', { timeout: 300_000 }, () => {
  it('in nets with and without a battery: found where one agrees, the highest of them, and refused where none does', () => {
    fc.assert(
      fc.property(awkward, ({ network, limited }) => {
        const found = findStates(network, limited);
        const agreeing = allAgreeing(network, limited);
        expect(found.ok).toBe(agreeing.length > 0);
        if (!found.ok) return;
        const height = (solved: (typeof agreeing)[number]['solved']): number =>
          limited.reduce((sum, { plus, minus }) => sum + across(solved, plus, minus), 0);
        const highest = Math.max(...agreeing.map(({ solved }) => height(solved)));
        expect(height(found.solved)).toBeGreaterThan(highest - 1e-4);
      }),
      { seed: 31, numRuns: process.env.FEEDRUN_LONG === undefined ? 150 : 3000 },
    );
  });
});
