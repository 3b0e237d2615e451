import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../src/calc/network/solve.ts';
import type { Network, NetworkLoad } from '../../../src/calc/network/types.ts';

const inProportion = (plus: number, minus: number, amps: number): NetworkLoad => ({
  plus,
  minus,
  law: { kind: 'current', amps, atVolts: 12 },
});
const power = (plus: number, minus: number, watts: number): NetworkLoad => ({
  plus,
  minus,
  law: { kind: 'power', watts },
});

/** A source of `volts` held at posts 1 and 0. */
function unfed(volts: number, loads: readonly NetworkLoad[], more: Partial<Network> = {}): readonly number[] {
  const result = solveNetwork({
    nodes: 2,
    resistors: [],
    sources: [{ plus: 1, minus: 0, volts, ohm: 0 }],
    loads,
    ...more,
  });
  if (!result.ok) throw new Error(result.reason);
  return result.unfed;
}

describe('a load counts as fed', () => {
  it('under any voltage, whatever it draws and whichever way round it stands', () => {
    const loads = [
      power(1, 0, 10),
      power(0, 1, 10),
      power(1, 0, 0),
      inProportion(1, 0, 5),
      inProportion(0, 1, 5),
      inProportion(1, 0, 0),
    ];
    expect(unfed(12, loads)).toEqual([]);
    expect(unfed(0.0005, [inProportion(1, 0, 5), power(1, 0, 5), power(0, 1, 5)])).toEqual([]);
  });

  it('not where its two ends agree but for rounding, which is up to a billionth of a volt', () => {
    expect(unfed(1e-9, [inProportion(1, 0, 5), inProportion(0, 1, 5)])).toEqual([0, 1]);
    expect(unfed(1e-9, [power(1, 0, 5), power(0, 1, 5)])).toEqual([0, 1]);
    const both = [inProportion(1, 0, 5), inProportion(0, 1, 5), power(1, 0, 5), power(0, 1, 5)];
    expect(unfed(1.1e-9, both)).toEqual([]);
    // 0.1 + 0.2 is not quite 0.3
    const stack = [
      { plus: 1, minus: 0, volts: 0.1, ohm: 0 },
      { plus: 2, minus: 1, volts: 0.2, ohm: 0 },
      { plus: 3, minus: 0, volts: 0.3, ohm: 0 },
    ];
    expect(unfed(0, [inProportion(2, 3, 5), power(2, 3, 5)], { nodes: 4, sources: stack })).toEqual([0, 1]);
  });

  it('of constant power not under a billionth of the highest voltage across any element, either way round', () => {
    const small = power(2, 0, 5);
    const beside = (volts: number, smallVolts: number, loads: readonly NetworkLoad[]): readonly number[] =>
      unfed(0, [...loads, small], {
        nodes: 3,
        resistors: [{ a: 2, b: 0, ohm: 1 }],
        sources: [
          { plus: 1, minus: 0, volts, ohm: 0 },
          { plus: 2, minus: 0, volts: smallVolts, ohm: 0 },
        ],
      });
    for (const volts of [24, -24]) {
      expect(beside(volts, 2e-8, [power(1, 0, 5)])).toEqual([1]);
      expect(beside(volts, 3e-8, [power(1, 0, 5)])).toEqual([]);
      expect(beside(volts, 2e-8, [inProportion(1, 0, 5)])).toEqual([1]);
    }
  });
});
