import { describe, expect, it } from 'vitest';
import type { Network } from '../../../src/calc/network/types.ts';
import type { LimitedSource } from '../../../src/calc/supply/limited.ts';
import {
  type Charger,
  type SuppliedResult,
  type SuppliedSolved,
  solveSupplied,
} from '../../../src/calc/supply/supplied.ts';

function solved(result: SuppliedResult): SuppliedSolved {
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

const alternator = (change: Partial<LimitedSource> = {}): LimitedSource => ({
  plus: 1,
  minus: 0,
  volts: 14.4,
  ohm: 0,
  maxA: 50,
  ...change,
});

/** A battery of 12.6 V and 10 mohm on node 1, body 0, and one load there. */
const onPosts = (law: Network['loads'][number]['law']): Network => ({
  nodes: 2,
  resistors: [],
  sources: [{ plus: 1, minus: 0, volts: 12.6, ohm: 0.01 }],
  loads: [{ plus: 1, minus: 0, law }],
});

const ohms = (ohm: number): Network => onPosts({ kind: 'current', amps: 12 / ohm, atVolts: 12 });

describe('one alternator beside one battery, by hand', () => {
  it('holds 14.4 V while load and charging current stay within its output', () => {
    // 1 ohm draws 14.4 A; the battery takes (14.4 - 12.6) / 0.01 = 180 A
    const { nodeVolts, limited, sourceAmps } = solved(solveSupplied(ohms(1), [alternator({ maxA: 200 })]));
    expect(nodeVolts[1]).toBeCloseTo(14.4, 4);
    expect(limited[0]?.state).toBe('holding');
    expect(limited[0]?.amps).toBeCloseTo(194.4, 2);
    expect(sourceAmps[0]).toBeCloseTo(-180, 2);
  });

  it('saturated: the posts fall and the battery carries the rest', () => {
    // V (1 / 0.01 + 1 / 0.12) = 12.6 / 0.01 + 50
    const volts = (1260 + 50) / (100 + 1 / 0.12);
    const { nodeVolts, limited, sourceAmps } = solved(solveSupplied(ohms(0.12), [alternator()]));
    expect(nodeVolts[1]).toBeCloseTo(volts, 9);
    expect(limited).toEqual([{ state: 'saturated', amps: 50, volts: nodeVolts[1] }]);
    expect(sourceAmps[0]).toBeCloseTo((12.6 - volts) / 0.01, 6);
    expect((sourceAmps[0] ?? 0) + 50).toBeCloseTo(volts / 0.12, 6);
  });

  it('saturated with a constant-power load: V = (E + IR + sqrt((E + IR)^2 - 4PR)) / 2', () => {
    const open = 12.6 + 50 * 0.01;
    const volts = (open + Math.sqrt(open ** 2 - 4 * 1250 * 0.01)) / 2;
    const result = solved(solveSupplied(onPosts({ kind: 'power', watts: 1250 }), [alternator()]));
    expect(result.nodeVolts[1]).toBeCloseTo(volts, 9);
    expect(result.loadAmps).toHaveLength(1);
    expect(result.loadAmps[0]).toBeCloseTo(1250 / volts, 6);
  });

  it('off: no reverse current into it from posts above its voltage', () => {
    const { limited, nodeVolts } = solved(solveSupplied(ohms(10), [alternator({ volts: 12 })]));
    expect(limited[0]).toMatchObject({ state: 'off', amps: 0 });
    expect(nodeVolts[1]).toBeCloseTo(12.6 / (1 + 0.01 / 10), 9);
  });

  it('refuses what battery and alternator cannot carry, and tells the share they just carry', () => {
    const most = (12.6 + 50 * 0.01) ** 2 / (4 * 0.01);
    expect(solveSupplied(onPosts({ kind: 'power', watts: most * 0.999 }), [alternator()]).ok).toBe(true);
    const result = solveSupplied(onPosts({ kind: 'power', watts: most * 1.25 }), [alternator()]);
    expect(result).toMatchObject({ ok: false, reason: 'cannotCarry' });
    if (!result.ok && result.reason === 'cannotCarry') expect(result.largestShare).toBeCloseTo(0.8, 5);
  });

  it('between two posts that are both above the body: what counts is the voltage between them', () => {
    // its minus runs to the body through 10 mohm, which its current lowers: 1.8 V over 20 mohm, 90 A
    const net: Network = { ...ohms(1000), loads: [], nodes: 3, resistors: [{ a: 2, b: 0, ohm: 0.01 }] };
    const free = solved(solveSupplied(net, [alternator({ minus: 2, maxA: 200 })]));
    expect(free.limited[0]?.state).toBe('holding');
    expect(free.limited[0]?.amps).toBeCloseTo(90, 2);
    const { limited, nodeVolts } = solved(solveSupplied(net, [alternator({ minus: 2 })]));
    expect(limited[0]).toMatchObject({ state: 'saturated', amps: 50 });
    expect(nodeVolts[2]).toBeCloseTo(-0.5, 9);
    expect(limited[0]?.volts).toBeCloseTo(13.1 + 0.5, 9);
  });

  it('a limit of 0 is no alternator at all', () => {
    const { nodeVolts, limited } = solved(solveSupplied(ohms(0.12), [alternator({ maxA: 0 })]));
    expect(nodeVolts[1]).toBeCloseTo(12.6 / (1 + 0.01 / 0.12), 9);
    expect(limited[0]?.amps).toBe(0);
  });

  it('beside a battery held at its posts it gives all it has', () => {
    const held = { ...ohms(1), sources: [{ plus: 1, minus: 0, volts: 12.6, ohm: 0 }] };
    const { limited, sourceAmps } = solved(solveSupplied(held, [alternator()]));
    expect(limited[0]).toMatchObject({ state: 'saturated', amps: 50 });
    expect(sourceAmps[0]).toBeCloseTo(12.6 - 50, 9);
  });
});

describe('an alternator by itself', () => {
  const alone = (watts: number): Network => ({ ...onPosts({ kind: 'power', watts }), sources: [] });

  it('carries up to its limit and no more', () => {
    expect(solved(solveSupplied(alone(719), [alternator()])).nodeVolts[1]).toBeCloseTo(14.4, 4);
    const result = solveSupplied(alone(1440), [alternator()]);
    expect(result).toMatchObject({ ok: false, reason: 'cannotCarry' });
    if (!result.ok && result.reason === 'cannotCarry') expect(result.largestShare).toBeCloseTo(0.5, 5);
  });

  it('four, each overloaded by its own load, with nothing else: no more than half is carried', () => {
    const loads = [1, 2, 3, 4].map((plus) => ({ plus, minus: 0, law: { kind: 'power' as const, watts: 1440 } }));
    const four = [1, 2, 3, 4].map((plus) => alternator({ plus }));
    const result = solveSupplied({ nodes: 5, resistors: [], sources: [], loads }, four);
    if (result.ok || result.reason !== 'cannotCarry') throw new Error('carried');
    expect(result.largestShare).toBeCloseTo(0.5, 5);
  });

  it('feeds nothing that it is not joined to', () => {
    const { unfed, limited } = solved(
      solveSupplied({ ...alone(100), nodes: 3, loads: [{ plus: 2, minus: 0, law: { kind: 'power', watts: 9 } }] }, [
        alternator(),
      ]),
    );
    expect(unfed).toEqual([0]);
    expect(limited[0]).toMatchObject({ state: 'holding', amps: 0 });
  });
});

describe('several alternators', () => {
  it('on one post: the higher voltage leads, the lower helps once the posts have fallen to it', () => {
    const pair = [alternator({ volts: 14.2, maxA: 80 }), alternator({ maxA: 50 })];
    // battery takes nothing at its own voltage; draw in between, so that the first two states differ
    const one = solved(solveSupplied({ ...ohms(1), sources: [] }, pair));
    expect(one.limited.map(({ state }) => state)).toEqual(['off', 'holding']);
    const both = solved(solveSupplied({ ...ohms(0.142), sources: [] }, pair));
    expect(both.limited.map(({ state }) => state)).toEqual(['holding', 'saturated']);
    expect(both.limited[0]?.amps).toBeCloseTo(100 - 50, 3);
  });

  it('five without resistance on one post come in one after the other, highest first', () => {
    // more than are tried in every combination; at 13.8 V the battery takes 120 A and the load 65 A
    const volts = [13.8, 14.4, 13.6, 14, 14.2];
    const five = volts.map((each) => alternator({ volts: each, maxA: 60 }));
    const { limited, nodeVolts } = solved(solveSupplied(ohms(13.8 / 65), five));
    expect(nodeVolts[1]).toBeCloseTo(13.8, 4);
    expect(limited.map(({ state }) => state)).toEqual(['holding', 'saturated', 'off', 'saturated', 'saturated']);
    expect(limited[0]?.amps).toBeCloseTo(120 + 65 - 180, 2);
  });

  it('alike and on one post: together they bring both limits', () => {
    const { limited, nodeVolts } = solved(solveSupplied(ohms(0.1), [alternator(), alternator()]));
    expect(limited.map(({ amps }) => amps)).toEqual([50, 50]);
    expect(nodeVolts[1]).toBeCloseTo((1260 + 100) / (100 + 10), 9);
  });

  it('sources that contradict one another are refused as before', () => {
    const posts = { plus: 1, minus: 0, ohm: 0 };
    const sources = [
      { ...posts, volts: 12.6 },
      { ...posts, volts: 13 },
    ];
    expect(solveSupplied({ ...ohms(1), sources }, [alternator()])).toEqual({
      ok: false,
      reason: 'sourcesConflict',
      element: 'source',
      index: 1,
    });
  });
});

describe('a DC-DC charger', () => {
  // starter battery on 1, second battery of 12.2 V and 20 mohm on 2, body 0
  const pair: Network = {
    nodes: 3,
    resistors: [],
    sources: [
      { plus: 1, minus: 0, volts: 12.6, ohm: 0.01 },
      { plus: 2, minus: 0, volts: 12.2, ohm: 0.02 },
    ],
    loads: [],
  };
  const charger = (change: Partial<LimitedSource> = {}, efficiency = 0.9): Charger => ({
    input: { plus: 1, minus: 0 },
    output: { plus: 2, minus: 0, volts: 14.4, ohm: 0, maxA: 30, ...change },
    efficiency,
  });

  it('at its limit: 30 A at 12.8 V out, 426.7 W in', () => {
    const result = solved(solveSupplied(pair, [], [charger()]));
    const watts = (30 * (12.2 + 30 * 0.02)) / 0.9;
    const volts = (12.6 + Math.sqrt(12.6 ** 2 - 4 * watts * 0.01)) / 2;
    const [one] = result.chargers;
    expect(one).toMatchObject({ state: 'saturated', amps: 30 });
    expect(one?.volts).toBeCloseTo(12.8, 9);
    expect(one?.inputVolts).toBeCloseTo(volts, 8);
    expect(one?.inputAmps).toBeCloseTo(watts / volts, 6);
    expect(result.sourceAmps).toHaveLength(2);
    expect(result.loadAmps).toEqual([]);
  });

  it('within its limit it holds: (13.2 - 12.2) / 0.05 = 20 A through a cable of 30 mohm', () => {
    const net = { ...pair, nodes: 4, resistors: [{ a: 3, b: 2, ohm: 0.03 }] };
    const [one] = solved(solveSupplied(net, [], [charger({ plus: 3, volts: 13.2 })])).chargers;
    expect(one?.state).toBe('holding');
    expect(one?.amps).toBeCloseTo(20, 3);
  });

  it('without voltage at its input it gives nothing, even where its output would feed its own input', () => {
    const [second] = pair.sources.slice(1);
    const net = { ...pair, sources: second === undefined ? [] : [second] };
    expect(solved(solveSupplied(net, [], [charger()])).chargers[0]).toMatchObject({
      state: 'off',
      amps: 0,
      inputAmps: 0,
      inputVolts: 0,
    });
    const circle = { ...pair, sources: [], resistors: [{ a: 1, b: 2, ohm: 0.01 }] };
    expect(solved(solveSupplied(circle, [], [charger()])).chargers[0]?.state).toBe('off');
  });

  it('one that sleeps takes nothing from what is told of the next', () => {
    const net = { ...pair, nodes: 4 };
    const asleep: Charger = { ...charger({ maxA: 5 }), input: { plus: 3, minus: 0 } };
    const { chargers } = solved(solveSupplied(net, [alternator({ maxA: 7 })], [asleep, charger()]));
    expect(chargers[0]).toMatchObject({ state: 'off', amps: 0, inputAmps: 0, inputVolts: 0 });
    expect(chargers[1]).toMatchObject({ state: 'saturated', amps: 30 });
    expect((chargers[1]?.inputAmps ?? 0) * (chargers[1]?.inputVolts ?? 0)).toBeCloseTo((30 * 12.8) / 0.9, 6);
  });

  it('behind another charger is awake once that one is', () => {
    const net = { ...pair, nodes: 4, sources: pair.sources.slice(0, 1) };
    const second: Charger = { ...charger({ plus: 3 }), input: { plus: 2, minus: 0 } };
    const loaded: Network = { ...net, loads: [{ plus: 3, minus: 0, law: { kind: 'power', watts: 90 } }] };
    const { chargers, nodeVolts } = solved(solveSupplied(loaded, [], [second, charger()]));
    expect(nodeVolts[3]).toBeCloseTo(14.4, 4);
    expect(nodeVolts[2]).toBeCloseTo(14.4, 4);
    // 90 W, then 90 / 0.9 = 100 W, then 111.1 W out of the battery
    expect((chargers[0]?.inputAmps ?? 0) * (chargers[0]?.inputVolts ?? 0)).toBeCloseTo(100, 6);
    expect((chargers[1]?.inputAmps ?? 0) * (chargers[1]?.inputVolts ?? 0)).toBeCloseTo(100 / 0.9, 6);
  });

  it('beside an alternator at idle: what the charger draws is the battery to bring', () => {
    const { limited, chargers, sourceAmps } = solved(solveSupplied(pair, [alternator({ maxA: 20 })], [charger()]));
    expect(limited[0]).toMatchObject({ state: 'saturated', amps: 20 });
    expect((sourceAmps[0] ?? 0) + 20).toBeCloseTo(chargers[0]?.inputAmps ?? Number.NaN, 6);
  });

  it('where an alternator by itself has too much to carry, nothing of it is carried: no load can be scaled', () => {
    // 14.4 V over 0.144 ohm: 100 A of 50 A
    const net: Network = { ...ohms(0.144), nodes: 3, sources: [] };
    const refused = { ok: false, reason: 'cannotCarry', largestShare: 0 };
    expect(solveSupplied(net, [alternator()], [charger()])).toEqual(refused);
    expect(solveSupplied(net, [alternator()])).toEqual(refused);
  });

  it('sleeps at less than a microvolt, and wakes at half a volt', () => {
    for (const [volts, state] of [
      [1e-7, 'off'],
      [0.5, 'holding'],
    ] as const) {
      const sources = [{ plus: 1, minus: 0, volts, ohm: 0.001 }];
      const net: Network = { nodes: 3, resistors: [], sources, loads: [] };
      expect(solved(solveSupplied(net, [], [charger()])).chargers[0]?.state).toBe(state);
    }
  });

  it('tells of the net alone: no load, source or current of its own stands in what is told of others', () => {
    // an injection into a dead node, a load on another, and a charger asleep on the dead node beside one at its limit
    const net: Network = {
      ...pair,
      nodes: 5,
      loads: [{ plus: 3, minus: 0, law: { kind: 'power', watts: 9 } }],
      injections: [
        { from: 0, to: 1, amps: 2 },
        { from: 0, to: 3, amps: 1 },
      ],
    };
    const asleep: Charger = { ...charger({ maxA: 5 }), input: { plus: 4, minus: 0 } };
    const result = solved(solveSupplied(net, [alternator({ maxA: 7 })], [asleep, charger()]));
    expect(result.unfed).toEqual([0]);
    expect(result.undelivered).toEqual([1]);
    expect(result.sourceAmps).toHaveLength(2);
    expect(result.loadAmps).toHaveLength(1);
    // battery, alternator and injection bring what the charger takes
    expect((result.sourceAmps[0] ?? 0) + 7 + 2).toBeCloseTo(result.chargers[1]?.inputAmps ?? Number.NaN, 6);
    const holding = solved(solveSupplied({ ...net, loads: [] }, [alternator({ volts: 13, maxA: 400 })]));
    expect(holding.limited[0]?.state).toBe('holding');
    expect(holding.sourceAmps).toHaveLength(2);
    // beside a load of some 12 A that is none of the sleeping one's
    const drawn = solved(solveSupplied({ ...ohms(1), nodes: 5 }, [], [asleep]));
    expect(drawn.loadAmps[0]).toBeCloseTo(12.6 / 1.01, 9);
    expect(drawn.chargers[0]?.inputAmps).toBe(0);
  });

  it('feeding amplifiers alone carries up to its limit', () => {
    const net: Network = { ...pair, sources: pair.sources.slice(0, 1) };
    const loaded = (watts: number): Network => ({
      ...net,
      loads: [{ plus: 2, minus: 0, law: { kind: 'power', watts } }],
    });
    expect(solved(solveSupplied(loaded(430), [], [charger()])).chargers[0]?.state).toBe('holding');
    const result = solveSupplied(loaded(864), [], [charger()]);
    if (result.ok || result.reason !== 'cannotCarry') throw new Error('carried');
    expect(result.largestShare).toBeCloseTo(0.5, 5);
  });
});

describe('refusals, by hand', () => {
  // node 2 is fed by the 11 V alone, 100 A at most: 1 ohm takes 11 A of them, 979 W are left to the 1500 W
  const loads: Network['loads'] = [{ plus: 2, minus: 0, law: { kind: 'power', watts: 1500 } }];
  const resistors = [
    { a: 1, b: 0, ohm: 0.1 },
    { a: 2, b: 0, ohm: 1 },
  ];
  const heavy: Network = { nodes: 3, resistors, sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0.1 }], loads };
  const three = [
    alternator({ volts: 12, ohm: 0.1, maxA: 100 }),
    alternator({ plus: 2, volts: 11, maxA: 100 }),
    alternator({ volts: 13, ohm: 0.1, maxA: 400 }),
  ];

  it('where no states agree, the share is found by halving: from below, to a part in a million', () => {
    const postV = 11 - 100 * 1e-7;
    const most = (postV * (100 - postV)) / 1500;
    const result = solveSupplied(heavy, three);
    if (result.ok || result.reason !== 'cannotCarry') throw new Error('not refused as too much');
    expect(result.largestShare).toBeLessThanOrEqual(most * (1 + 1e-9));
    expect(result.largestShare).toBeGreaterThan(most - 1e-6);
  });

  it('of more than are tried in every combination, none is said to be too much', () => {
    const second = { plus: 3, minus: 0, volts: 12, ohm: 0.1 };
    const net: Network = { ...heavy, nodes: 4, sources: [...heavy.sources, second] };
    const four = [...three, alternator({ plus: 3, volts: 14, ohm: 0.01, maxA: 100 })];
    expect(solveSupplied(net, four)).toEqual({ ok: false, reason: 'noState' });
  });

  it('twice what the battery can bring, a charger beside it giving nothing: half', () => {
    // 12.6^2 / 0.04 W; the posts of the second battery are above the charger
    const net: Network = {
      ...onPosts({ kind: 'power', watts: (2 * 12.6 ** 2) / 0.04 }),
      nodes: 3,
      sources: [
        { plus: 1, minus: 0, volts: 12.6, ohm: 0.01 },
        { plus: 2, minus: 0, volts: 15, ohm: 0.01 },
      ],
    };
    const output = { plus: 2, minus: 0, volts: 14.4, ohm: 0, maxA: 30 };
    const beside: Charger = { input: { plus: 1, minus: 0 }, output, efficiency: 0.9 };
    const result = solveSupplied(net, [], [beside]);
    if (result.ok || result.reason !== 'cannotCarry') throw new Error('carried');
    expect(result.largestShare).toBeCloseTo(0.5, 5);
    // the alternator alone holds 720 W
    const alone = { ...onPosts({ kind: 'power', watts: 1440 }), nodes: 3, sources: net.sources.slice(1) };
    const overloaded = solveSupplied(alone, [alternator()], [beside]);
    if (overloaded.ok || overloaded.reason !== 'cannotCarry') throw new Error('carried');
    expect(overloaded.largestShare).toBeCloseTo(0.5, 5);
    const light = solved(solveSupplied({ ...net, loads: [] }, [], [beside]));
    expect(light.chargers[0]).toMatchObject({ state: 'off', amps: 0, inputAmps: 0 });
  });
});

it('what no way from the full loads leads to is found by raising them: 12.2 V behind 0.05 ohm, and 700 W', () => {
  // 13 V and 11 V of 0.1 ohm each hold, 12 V behind 0.05 ohm; the two of 2 A lift that by 0.2 V
  const net: Network = { ...onPosts({ kind: 'power', watts: 700 }), sources: [] };
  const four = [
    alternator({ volts: 13, ohm: 0.1, maxA: 400 }),
    alternator({ volts: 24, ohm: 0.1, maxA: 2 }),
    alternator({ volts: 11, ohm: 0.1 }),
    alternator({ volts: 11, maxA: 2 }),
  ];
  const { nodeVolts, limited } = solved(solveSupplied(net, four));
  expect(limited.map(({ state }) => state)).toEqual(['holding', 'saturated', 'holding', 'saturated']);
  expect(nodeVolts[1]).toBeCloseTo((12.2 + Math.sqrt(12.2 ** 2 - 4 * 700 * 0.05)) / 2, 9);
});

describe('a charger that feeds its own posts and loses half', () => {
  // 30 A given for 60 A drawn, whatever the voltage: 30 A from the battery
  const own: Charger = { input: { plus: 1, minus: 0 }, output: alternator({ maxA: 30 }), efficiency: 0.5 };
  const behind = (ohm: number): Network => ({
    nodes: 2,
    resistors: [],
    sources: [{ plus: 1, minus: 0, volts: 12.6, ohm }],
    loads: [],
  });

  it('settles where what it draws and what it gives agree', () => {
    const [one] = solved(solveSupplied(behind(1 / 30), [], [own])).chargers;
    expect(one?.inputVolts).toBeCloseTo(12.6 - 1, 8);
    expect(one?.inputAmps).toBeCloseTo(60, 6);
  });

  it('is told as unsettled where each round overshoots by nearly as much as the one before', () => {
    // the slope of the power over itself is -2 x / (12.6 - 3 x) at x = 30 A R: -0.98 at 2.5 V
    expect(solveSupplied(behind(2.5 / 30), [], [own])).toEqual({ ok: false, reason: 'unsettled' });
  });
});

describe('what no plan can mean', () => {
  it('is refused', () => {
    expect(() => solveSupplied(ohms(1), [alternator({ maxA: -1 })])).toThrow(RangeError);
    expect(() => solveSupplied(ohms(1), [alternator({ maxA: Number.NaN })])).toThrow(RangeError);
    const free: Charger = { input: { plus: 1, minus: 0 }, output: alternator(), efficiency: 0 };
    expect(() => solveSupplied(ohms(1), [], [free])).toThrow(RangeError);
    // one that is sound beside it does not help
    for (const maxA of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => solveSupplied(ohms(1), [alternator(), alternator({ maxA })])).toThrow(RangeError);
    const sound: Charger = { ...free, efficiency: 0.9 };
    for (const efficiency of [0, -0.5, 1.01, Number.NaN])
      expect(() => solveSupplied(ohms(1), [], [sound, { ...free, efficiency }])).toThrow(RangeError);
    const endless = { ...sound, output: alternator({ maxA: Number.POSITIVE_INFINITY }) };
    expect(() => solveSupplied(ohms(1), [], [endless])).toThrow(RangeError);
  });

  it('without loss a charger is taken as it is', () => {
    const lossless: Charger = {
      input: { plus: 1, minus: 0 },
      output: { plus: 2, minus: 0, volts: 14.4, ohm: 0, maxA: 30 },
      efficiency: 1,
    };
    const net: Network = { ...ohms(1), nodes: 3, loads: [{ plus: 2, minus: 0, law: { kind: 'power', watts: 90 } }] };
    const [one] = solved(solveSupplied(net, [], [lossless])).chargers;
    expect((one?.inputAmps ?? 0) * (one?.inputVolts ?? 0)).toBeCloseTo(90, 6);
  });
});
