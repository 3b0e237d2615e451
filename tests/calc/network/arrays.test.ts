import { describe, expect, it } from 'vitest';
import { add, real, whole } from '../../../src/calc/network/arrays.ts';

describe('a figure from beside the array', () => {
  it('is refused, read or written, and never passes for a number', () => {
    for (const index of [-1, 2, 0.5, Number.NaN]) {
      expect(() => real(new Float64Array(2), index)).toThrow('outside an array of 2');
      expect(() => whole(new Int32Array(2), index)).toThrow('outside an array of 2');
      expect(() => add(new Float64Array(2), index, 1)).toThrow(RangeError);
    }
    expect(real(new Float64Array([1.5]), 0)).toBe(1.5);
    expect(whole(new Int32Array([7, -3]), 1)).toBe(-3);
  });
});
