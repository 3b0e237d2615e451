import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumDegree } from '../../../src/calc/network/order.ts';
import { SparseSymmetric } from '../../../src/calc/network/sparse.ts';
import { solveDense } from './dense.ts';

const neighboursOf = (size: number, pairs: readonly (readonly [number, number])[]): Set<number>[] => {
  const sets = Array.from({ length: size }, () => new Set<number>());
  for (const [one, other] of pairs) {
    sets[one]?.add(other);
    sets[other]?.add(one);
  }
  return sets;
};

describe('order of elimination', () => {
  it('fills nothing in on a tree, a star or a chain', () => {
    const star = Array.from({ length: 40 }, (_, index) => [0, index + 1] as const);
    const chain = Array.from({ length: 40 }, (_, index) => [index, index + 1] as const);
    const tree = Array.from({ length: 40 }, (_, index) => [index >> 1, index + 1] as const);
    for (const pairs of [star, chain, tree]) {
      const { order, remaining } = minimumDegree(neighboursOf(41, pairs));
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: 41 }, (_, index) => index));
      expect(remaining.flat()).toHaveLength(pairs.length);
    }
  });

  it('costs a ring no more than one extra entry for each step', () => {
    const ring = Array.from({ length: 20 }, (_, index) => [index, (index + 1) % 20] as const);
    expect(minimumDegree(neighboursOf(20, ring)).remaining.flat()).toHaveLength(2 * 20 - 3);
  });
});

describe('factor and solve', () => {
  const graph = fc.record({
    size: fc.integer({ min: 1, max: 14 }),
    edges: fc.array(fc.tuple(fc.nat(1000), fc.nat(1000), fc.integer({ min: 1, max: 900 })), { maxLength: 40 }),
    grounds: fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 14, maxLength: 14 }),
    right: fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 14, maxLength: 14 }),
  });

  it('give what a full elimination gives, on any graph', () => {
    fc.assert(
      fc.property(graph, ({ size, edges, grounds, right }) => {
        const pairs = edges.map(([one, other, siemens]) => [one % size, other % size, siemens] as const);
        const matrix = new SparseSymmetric(
          size,
          pairs.map(([one, other]) => [one, other] as const),
        );
        const dense = Array.from({ length: size }, () => new Array<number>(size).fill(0));
        const put = (row: number, column: number, value: number): void => {
          const cells = dense[row];
          if (cells !== undefined) cells[column] = (cells[column] ?? 0) + value;
        };
        for (const [one, other, siemens] of pairs) {
          matrix.stamp(matrix.slot(one, other), siemens);
          if (one === other) continue;
          put(one, one, siemens);
          put(other, other, siemens);
          put(one, other, -siemens);
          put(other, one, -siemens);
        }
        for (let unknown = 0; unknown < size; unknown += 1) {
          matrix.stamp(matrix.slot(unknown, -1), grounds[unknown] ?? 1);
          put(unknown, unknown, grounds[unknown] ?? 1);
        }
        const x = Float64Array.from(right.slice(0, size));
        expect(matrix.factor()).toBe(true);
        matrix.solve(x);
        const expected = solveDense(dense, right.slice(0, size));
        for (const [unknown, value] of x.entries()) expect(value).toBeCloseTo(expected?.[unknown] ?? Number.NaN, 9);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('refuse a matrix that is not positive definite', () => {
    const matrix = new SparseSymmetric(2, [[0, 1]]);
    matrix.stamp(matrix.slot(0, 1), 5);
    matrix.stamp(matrix.slot(0, -1), 1);
    expect(matrix.factor()).toBe(true);
    matrix.stamp(matrix.slot(1, -1), -1);
    expect(matrix.factor()).toBe(false);
    matrix.clear();
    expect(matrix.factor()).toBe(false);
  });

  it('refuse a coupling outside the pattern', () => {
    expect(() => new SparseSymmetric(3, [[0, 1]]).slot(0, 2)).toThrow('outside the pattern');
  });
});
