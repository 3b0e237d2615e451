import { describe, expect, it } from 'vitest';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';
import {
  type LimitedSource,
  type LimitedState,
  limitedAmps,
  solveIn,
  statesAsked,
} from '../../../src/calc/supply/limited.ts';

const source = (change: Partial<LimitedSource> = {}): LimitedSource => ({
  plus: 1,
  minus: 0,
  volts: 14.4,
  ohm: 0.01,
  maxA: 50,
  ...change,
});

const bare: Network = { nodes: 4, resistors: [], sources: [], loads: [] };

/** A solution as it is told, of which only what counts is given. */
const told = (change: Partial<NetworkSolved>): NetworkSolved => ({
  ok: true,
  nodeVolts: [0, 0, 0, 0],
  resistorAmps: [],
  sourceAmps: [],
  loadAmps: [],
  unfed: [],
  dead: [],
  undelivered: [],
  ...change,
});

describe('what a state asks for, to the last digits', () => {
  const asked = (one: LimitedSource, state: LimitedState, amps: number, volts: number): LimitedState | undefined =>
    statesAsked(bare, [one], [state], told({ nodeVolts: [0, volts, 0, 0], sourceAmps: [amps] }))[0];

  it.each([
    // a ten-millionth of 50 A is 5 uA
    [50, 50 + 4e-6, 'holding'],
    [50, 50 + 6e-6, 'saturated'],
    [50, -4e-6, 'holding'],
    [50, -6e-6, 'off'],
    // below 1 A, of 1 A
    [0.01, 0.01 + 0.9e-7, 'holding'],
    [0.01, 0.01 + 1.1e-7, 'saturated'],
    [0.01, -0.9e-7, 'holding'],
    [0.01, -1.1e-7, 'off'],
  ])('of at most %f A, %f A are rounding or not: %s', (maxA, amps, expected) => {
    expect(asked(source({ maxA }), 'holding', amps, 14)).toBe(expected);
  });

  it.each([
    // 50 A over 10 mohm leave 13.9 V; a thousand-millionth of 14.4 V is 14.4 nV
    ['saturated', 14.4, 13.9, 'saturated'],
    ['saturated', 14.4, 13.9 + 1.4e-8, 'saturated'],
    ['saturated', 14.4, 13.9 + 1.5e-8, 'holding'],
    ['off', 14.4, 14.4 - 1.4e-8, 'off'],
    ['off', 14.4, 14.4 - 1.5e-8, 'holding'],
    ['off', 14.4, 15, 'off'],
    // below 1 V, of 1 V
    ['off', 0.5, 0.5 - 0.9e-9, 'off'],
    ['off', 0.5, 0.5 - 1.1e-9, 'holding'],
  ] as const)('%s, of %f V, with %f V between the posts: %s', (state, volts, posts, expected) => {
    expect(asked(source({ volts }), state, 0, posts)).toBe(expected);
  });

  it('counts between its posts, wherever its minus stands', () => {
    const between = told({ nodeVolts: [0, 14.4, 2, 0] });
    expect(statesAsked(bare, [source({ minus: 2 })], ['off'], between)).toEqual(['holding']);
  });
});

describe('several at once', () => {
  it('each finds its own current among those of the sources, and a saturated one gives its limit', () => {
    const battery = { plus: 1, minus: 0, volts: 12, ohm: 0.01 };
    const four = [source(), source(), source({ maxA: 9 }), source()];
    const solved = told({ sourceAmps: [3, 5, 7] });
    expect(
      limitedAmps({ ...bare, sources: [battery] }, four, ['off', 'holding', 'saturated', 'holding'], solved),
    ).toEqual([0, 5, 9, 7]);
  });

  it('stand in the net beside its own sources and currents', () => {
    // 12 V and 14 V behind 0.1 ohm, 2 A and 3 A into 1 ohm: V (10 + 10 + 1) = 120 + 140 + 5; what is off takes no part
    const net: Network = {
      ...bare,
      nodes: 2,
      resistors: [{ a: 1, b: 0, ohm: 1 }],
      sources: [{ plus: 1, minus: 0, volts: 12, ohm: 0.1 }],
      injections: [{ from: 0, to: 1, amps: 2 }],
    };
    const three = [source({ maxA: 3 }), source({ volts: 24 }), source({ volts: 14, ohm: 0.1 })];
    const result = solveIn(net, three, ['saturated', 'off', 'holding']);
    expect(result.ok && result.nodeVolts[1]).toBeCloseTo(265 / 21, 9);
  });

  it('a saturated one whose current finds no way is asked to hold, whatever currents the net has besides', () => {
    const three = [source(), source(), source()];
    const states = ['off', 'saturated', 'saturated'] as const;
    const posts = [0, 13, 0, 0];
    // above what it could hold it would be asked to stay off
    const first = source({ volts: 12 });
    const nothingElse = told({ nodeVolts: posts, undelivered: [0] });
    expect(statesAsked(bare, [first, ...three.slice(1)], states, nothingElse)).toEqual(['off', 'holding', 'saturated']);
    const current = { from: 0, to: 1, amps: 1 };
    const beside = { ...bare, injections: [current, current] };
    const second = told({ nodeVolts: posts, undelivered: [3] });
    expect(statesAsked(beside, [first, ...three.slice(1)], states, second)).toEqual(['off', 'saturated', 'holding']);
    // the net's own alone
    const own = told({ nodeVolts: posts, undelivered: [0, 1] });
    expect(statesAsked(beside, [first, ...three.slice(1)], states, own)).toEqual(['off', 'saturated', 'saturated']);
  });
});

describe('where nothing holds a voltage', () => {
  const dead = told({ nodeVolts: [0, 13, 0, 0], dead: [2, 3] });

  it('the highest of those that are off is woken, and all others stay as they are', () => {
    const many = [
      source({ volts: 13, plus: 2 }),
      source({ volts: 14, plus: 2 }),
      // at living posts below its voltage, and so higher but not asleep
      source({ volts: 15 }),
      // above what its limit leaves: it would hold
      source({ volts: 13.1 }),
      // not off, and stuck
      source({ volts: 24, plus: 3 }),
    ];
    const states = ['off', 'off', 'off', 'saturated', 'saturated'] as const;
    const asked = statesAsked(bare, many, states, { ...dead, undelivered: [1] });
    expect(asked).toEqual(['off', 'holding', 'off', 'saturated', 'saturated']);
  });

  it('one that has no voltage itself keeps none of the others waiting', () => {
    const two = [source({ volts: 0, plus: 2 }), source()];
    expect(statesAsked(bare, two, ['off', 'off'], dead)).toEqual(['off', 'holding']);
  });
});
