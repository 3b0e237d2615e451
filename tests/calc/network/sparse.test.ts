import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimumDegree } from '../../../src/calc/network/order.ts';
import { SparseSymmetric } from '../../../src/calc/network/sparse.ts';
import { invert, solveDense } from './dense.ts';

type Pairs = readonly (readonly [number, number])[];
const ends = (pairs: Pairs): [Int32Array, Int32Array] => [
  Int32Array.from(pairs, ([one]) => one),
  Int32Array.from(pairs, ([, other]) => other),
];
const sparse = (size: number, pairs: Pairs): SparseSymmetric => new SparseSymmetric(size, ...ends(pairs));

/** Adds a conductance between two unknowns; -1 stands for what is held at zero. */
function stamp(matrix: SparseSymmetric, one: number, other: number, siemens: number): void {
  if (one === other) return;
  const [first, second] = [one, other].map((unknown) => (unknown < 0 ? matrix.size : (matrix.place[unknown] ?? -1)));
  if (first === undefined || second === undefined) return;
  for (const place of [first, second]) matrix.diagonal[place] = (matrix.diagonal[place] ?? 0) + siemens;
  const entry = matrix.entry(first, second);
  matrix.lower[entry] = (matrix.lower[entry] ?? 0) - siemens;
}

/** The same elimination by sets of neighbours: every turn as it should be. Returns how many were left in all. */
function followBySets(size: number, pairs: Pairs): number {
  const { order, start, left } = minimumDegree(size, ...ends(pairs));
  const beside = Array.from({ length: size }, () => new Set<number>());
  for (const [one, other] of pairs) {
    if (one === other) continue;
    beside[one]?.add(other);
    beside[other]?.add(one);
  }
  const waiting = new Set(beside.keys());
  for (const [turn, vertex] of order.entries()) {
    const mine = beside[vertex] ?? new Set();
    expect(mine.size).toBe(Math.min(...[...waiting].map((each) => beside[each]?.size ?? 0)));
    const told = [...left.subarray(start[turn], start[turn + 1])];
    expect(told).toHaveLength(mine.size);
    expect(new Set(told)).toEqual(mine);
    for (const one of mine) {
      beside[one]?.delete(vertex);
      for (const other of mine) if (other !== one) beside[one]?.add(other);
    }
    waiting.delete(vertex);
  }
  expect(waiting.size).toBe(0);
  return left.length;
}

describe('order of elimination', () => {
  it('fills nothing in on a tree, a star or a chain', () => {
    const star = Array.from({ length: 40 }, (_, index) => [0, index + 1] as const);
    const chain = Array.from({ length: 40 }, (_, index) => [index, index + 1] as const);
    const tree = Array.from({ length: 40 }, (_, index) => [index >> 1, index + 1] as const);
    for (const pairs of [star, chain, tree]) {
      const { order, left } = minimumDegree(41, ...ends(pairs));
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: 41 }, (_, index) => index));
      expect(left).toHaveLength(pairs.length);
    }
  });

  it('costs a ring no more than one extra entry for each step', () => {
    const ring = Array.from({ length: 20 }, (_, index) => [index, (index + 1) % 20] as const);
    expect(minimumDegree(20, ...ends(ring)).left).toHaveLength(2 * 20 - 3);
  });

  it('takes at every turn one of the fewest neighbours, and tells those it has left, on any graph', () => {
    const graph = fc.record({
      size: fc.integer({ min: 1, max: 30 }),
      edges: fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { maxLength: 90 }),
    });
    fc.assert(
      fc.property(graph, ({ size, edges }) => {
        followBySets(
          size,
          edges.map(([one, other]) => [one % size, other % size] as const),
        );
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('keeps to that on a grid, where far more pairs come to stand beside one another than were given', () => {
    const side = 16;
    const grid = Array.from({ length: side * side }, (_, at) => [
      ...(at % side === side - 1 ? [] : [[at, at + 1] as const]),
      ...(at + side < side * side ? [[at, at + side] as const] : []),
    ]).flat();
    expect(followBySets(side * side, grid)).toBeGreaterThan(2 * grid.length);
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
        const matrix = sparse(
          size,
          pairs.map(([one, other]) => [one, other] as const),
        );
        const dense = Array.from({ length: size }, () => new Array<number>(size).fill(0));
        const put = (row: number, column: number, value: number): void => {
          const cells = dense[row];
          if (cells !== undefined) cells[column] = (cells[column] ?? 0) + value;
        };
        for (const [one, other, siemens] of pairs) {
          stamp(matrix, one, other, siemens);
          if (one === other) continue;
          put(one, one, siemens);
          put(other, other, siemens);
          put(one, other, -siemens);
          put(other, one, -siemens);
        }
        for (let unknown = 0; unknown < size; unknown += 1) {
          stamp(matrix, unknown, -1, grounds[unknown] ?? 1);
          put(unknown, unknown, grounds[unknown] ?? 1);
        }
        const inverse = invert(dense);
        const x = new Float64Array(size + 1);
        for (let unknown = 0; unknown < size; unknown += 1) x[matrix.place[unknown] ?? -1] = right[unknown] ?? 0;
        expect(matrix.factor()).toBe(true);
        const diagonal = matrix.inverseDiagonal();
        matrix.solve(x);
        const expected = solveDense(dense, right.slice(0, size));
        for (let unknown = 0; unknown < size; unknown += 1) {
          const place = matrix.place[unknown] ?? -1;
          expect(x[place]).toBeCloseTo(expected?.[unknown] ?? Number.NaN, 9);
          expect(diagonal[place]).toBeCloseTo(inverse?.[unknown]?.[unknown] ?? Number.NaN, 12);
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('refuse a matrix that is not positive definite', () => {
    const matrix = sparse(2, [[0, 1]]);
    stamp(matrix, 0, 1, 5);
    stamp(matrix, 0, -1, 1);
    expect(matrix.factor()).toBe(true);
    stamp(matrix, 1, -1, -1);
    expect(matrix.factor()).toBe(false);
    matrix.diagonal.fill(0);
    expect(matrix.factor()).toBe(false);
    expect(sparse(1, []).factor()).toBe(false);
  });

  it('take a weak ground behind a strong coupling, and refuse one that is lost in rounding', () => {
    // Two unknowns 1 S apart; with g to ground at one of them, one ampere into it gives 1 / g at both.
    for (const ground of [1e-6, 1e-9]) {
      const matrix = sparse(2, [[0, 1]]);
      stamp(matrix, 0, 1, 1);
      stamp(matrix, 0, -1, ground);
      expect(matrix.factor()).toBe(true);
      const x = new Float64Array(3);
      x[matrix.place[0] ?? -1] = 1;
      matrix.solve(x);
      expect((x[matrix.place[1] ?? -1] ?? 0) * ground).toBeCloseTo(1, 5);
    }
    const lost = sparse(2, [[0, 1]]);
    stamp(lost, 0, 1, 1);
    stamp(lost, 0, -1, 2e-16);
    expect(lost.factor()).toBe(false);
  });

  it('scale with the unit of the conductances: what is sound in siemens is so in any', () => {
    for (const unit of [1e-9, 1, 1e9]) {
      const matrix = sparse(2, [[0, 1]]);
      stamp(matrix, 0, 1, unit);
      stamp(matrix, 0, -1, unit);
      expect(matrix.factor()).toBe(true);
      stamp(matrix, 0, -1, -unit);
      expect(matrix.factor()).toBe(false);
    }
  });

  it('refuse a coupling outside the pattern', () => {
    const matrix = sparse(3, [[0, 1]]);
    // neither end of the one coupling is coupled with the third, whose column is empty
    for (const end of [0, 1])
      expect(() => matrix.entry(matrix.place[end] ?? -1, matrix.place[2] ?? -1)).toThrow('outside the pattern');
    // A chain has an entry in every column but the last: the ends are coupled with something, yet not with one another.
    const chain = sparse(4, [
      [0, 1],
      [1, 2],
      [2, 3],
    ]);
    expect(() => chain.entry(chain.place[0] ?? -1, chain.place[3] ?? -1)).toThrow('outside the pattern');
    expect(() => chain.entry(chain.place[1] ?? -1, chain.place[3] ?? -1)).toThrow('outside the pattern');
  });
});
