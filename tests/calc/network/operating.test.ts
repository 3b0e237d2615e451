import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';
import { portShare, portsOf } from './ports.ts';

function solved(network: Network): NetworkSolved {
  const result = solveNetwork(network);
  if (!result.ok) throw new Error(`refused: ${result.reason}`);
  return result;
}

const posts = [{ plus: 1, minus: 0, volts: 12, ohm: 0 }];
const power = (plus: number, minus: number, watts: number): Network['loads'][number] => ({
  plus,
  minus,
  law: { kind: 'power', watts },
});
const inProportion = (plus: number, minus: number, amps: number): Network['loads'][number] => ({
  plus,
  minus,
  law: { kind: 'current', amps, atVolts: 12 },
});

/** Two feeds of their own, `ohm` to node 2 and `ohm` to node 3. */
const twoFeeds = (ohm: number, loads: Network['loads']): Network => ({
  nodes: 4,
  resistors: [
    { a: 1, b: 2, ohm },
    { a: 1, b: 3, ohm },
  ],
  sources: posts,
  loads,
});

describe('a linear net', () => {
  it('keeps its digits where a strong coupling stands before a weak one', () => {
    // 1 ohm of cable, 10 nohm, and a load of 1 ohm: without refinement eight digits are lost
    const net: Network = {
      nodes: 4,
      resistors: [
        { a: 1, b: 2, ohm: 1 },
        { a: 2, b: 3, ohm: 1e-8 },
      ],
      sources: posts,
      loads: [inProportion(3, 0, 12)],
    };
    expect(solved(net).nodeVolts[3]).toBeCloseTo(12 / (2 + 1e-8), 12);
  });
});

describe('two feeds of their own', () => {
  it.each([
    [100, 3599.9],
    [3599.9, 100],
  ])('with %d and %d W each settle where each by itself would', (one, other) => {
    const { nodeVolts } = solved(twoFeeds(0.01, [power(2, 0, one), power(3, 0, other)]));
    for (const [index, watts] of [one, other].entries())
      expect(nodeVolts[index + 2]).toBeCloseTo((12 + Math.sqrt(144 - 0.04 * watts)) / 2, 8);
  });
});

describe('a load between two feeds', () => {
  it('is not carried past the share at which another turns its voltage round', () => {
    // at no load 10 A hold node 3 a volt below node 2; 200 W would bring node 2 down by 1.7 V
    const net = twoFeeds(0.1, [inProportion(3, 0, 10), power(2, 0, 200), power(2, 3, 1)]);
    const expected = portShare(portsOf(net), [200, 1], 1);
    expect(expected).toBeLessThan(0.9);
    const result = solveNetwork(net);
    if (result.ok || result.reason !== 'cannotCarry') throw new Error('carried');
    expect(result.largestShare).toBeCloseTo(expected, 6);
  });
});
