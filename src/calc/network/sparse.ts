import { real, whole } from './arrays.ts';
import { minimumDegree } from './order.ts';

/**
 * A symmetric sparse matrix that can be filled and factored again and again over one pattern. The pattern (order, fill,
 * and where every update lands) is worked out once. Rows are numbered by their place in the order of elimination;
 * `place` tells it for each unknown of the couplings that were given. One place more, the last, stands for everything
 * held at zero: what is stamped there is never read, so that a stamp need not ask.
 */
export class SparseSymmetric {
  readonly size: number;
  readonly place: Int32Array;
  /** By place; the last entry is the one that is never read. */
  readonly diagonal: Float64Array;
  /** By entry below the diagonal; the last entry is the one that is never read. */
  readonly lower: Float64Array;
  /** Entries of column c, rows ascending: from columnStart[c] to columnStart[c + 1] in `row` and in the factor. */
  private readonly columnStart: Int32Array;
  private readonly row: Int32Array;
  /** For every pair of rows in a column, in order of elimination, the entry its update lands on. */
  private readonly target: Int32Array;
  private readonly factorDiagonal: Float64Array;
  private readonly factorLower: Float64Array;

  constructor(size: number, first: Int32Array, second: Int32Array) {
    this.size = size;
    const { order, start, left } = minimumDegree(size, first, second);
    this.place = new Int32Array(size);
    for (let turn = 0; turn < size; turn += 1) this.place[whole(order, turn)] = turn;
    this.columnStart = start;
    this.row = left;
    let pairs = 0;
    for (let column = 0; column < size; column += 1) {
      const [from, to] = [whole(start, column), whole(start, column + 1)];
      for (let at = from; at < to; at += 1) this.insert(from, at, whole(this.place, whole(left, at)));
      pairs += ((to - from) * (to - from - 1)) / 2;
    }
    this.target = new Int32Array(pairs);
    this.findTargets();
    this.diagonal = new Float64Array(size + 1);
    this.factorDiagonal = new Float64Array(size + 1);
    this.lower = new Float64Array(this.row.length + 1);
    this.factorLower = new Float64Array(this.row.length + 1);
  }

  /** Puts a row among those from `from` to `at`, which ascend. */
  private insert(from: number, at: number, row: number): void {
    let free = at;
    for (; free > from && whole(this.row, free - 1) > row; free -= 1) this.row[free] = whole(this.row, free - 1);
    this.row[free] = row;
  }

  private findTargets(): void {
    let next = 0;
    for (let column = 0; column < this.size; column += 1) {
      const end = whole(this.columnStart, column + 1);
      for (let one = whole(this.columnStart, column); one < end; one += 1) {
        for (let other = one + 1; other < end; other += 1) {
          this.target[next] = this.entry(whole(this.row, one), whole(this.row, other));
          next += 1;
        }
      }
    }
  }

  /** Where a coupling of the pattern is stamped in `lower`, by places; the entry that is never read for one with itself or with what is held at zero. */
  entry(one: number, other: number): number {
    const column = Math.min(one, other);
    const row = Math.max(one, other);
    if (row === column || row === this.size) return this.row.length;
    let low = whole(this.columnStart, column);
    let high = whole(this.columnStart, column + 1) - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (whole(this.row, middle) < row) low = middle + 1;
      else high = middle;
    }
    if (low > high || whole(this.row, low) !== row) throw new RangeError('sparse: a coupling outside the pattern');
    return low;
  }

  /** Factors into L D L^T. False when a pivot is not clearly positive: the matrix is not positive definite. */
  factor(): boolean {
    const { columnStart, row, target, factorDiagonal, factorLower, diagonal, size } = this;
    factorDiagonal.set(diagonal);
    factorLower.set(this.lower);
    let next = 0;
    for (let column = 0; column < size; column += 1) {
      const pivot = real(factorDiagonal, column);
      // A pivot that cancelled to the last digits of its own entry carries no sign; below an entry under 0 it is lower yet.
      if (!(pivot > 1e-13 * real(diagonal, column))) return false;
      const end = whole(columnStart, column + 1);
      for (let one = whole(columnStart, column); one < end; one += 1) {
        const entry = real(factorLower, one);
        const scaled = entry / pivot;
        const at = whole(row, one);
        factorDiagonal[at] = real(factorDiagonal, at) - entry * scaled;
        for (let other = one + 1; other < end; other += 1) {
          const landing = whole(target, next);
          factorLower[landing] = real(factorLower, landing) - scaled * real(factorLower, other);
          next += 1;
        }
        factorLower[one] = scaled;
      }
    }
    return true;
  }

  /** Solves the factored system; `rightSide` is by place and is replaced by the solution, 0 at what is held at zero. */
  solve(rightSide: Float64Array): void {
    const { columnStart, row, factorDiagonal, factorLower, size } = this;
    for (let column = 0; column < size; column += 1) {
      const value = real(rightSide, column);
      const end = whole(columnStart, column + 1);
      for (let entry = whole(columnStart, column); entry < end; entry += 1) {
        const at = whole(row, entry);
        rightSide[at] = real(rightSide, at) - real(factorLower, entry) * value;
      }
    }
    for (let column = size - 1; column >= 0; column -= 1) {
      let value = real(rightSide, column) / real(factorDiagonal, column);
      const end = whole(columnStart, column + 1);
      for (let entry = whole(columnStart, column); entry < end; entry += 1) {
        value -= real(factorLower, entry) * real(rightSide, whole(row, entry));
      }
      rightSide[column] = value;
    }
    rightSide[size] = 0;
  }

  /**
   * Diagonal of the inverse of the factored matrix, by place, without a solve for each: Takahashi's recurrence, which
   * runs the elimination backwards and needs the inverse only where the factor has an entry. Costs one factorisation.
   * Source: K. Takahashi, J. Fagan, M. Chin, Formation of a sparse bus impedance matrix and its application to short
   * circuit study, 8th PICA conference, 1973 (from memory). The factor of [[2, -1], [-1, 2]] gives 2/3 twice.
   */
  inverseDiagonal(): Float64Array {
    const { columnStart, row, target, factorDiagonal, factorLower, size } = this;
    const diagonal = new Float64Array(size + 1);
    const lower = new Float64Array(this.row.length);
    let next = this.target.length;
    for (let column = size - 1; column >= 0; column -= 1) {
      const start = whole(columnStart, column);
      const end = whole(columnStart, column + 1);
      for (let one = end - 1; one >= start; one -= 1) {
        const factor = real(factorLower, one);
        let sum = factor * real(diagonal, whole(row, one));
        for (let other = end - 1; other > one; other -= 1) {
          next -= 1;
          const known = real(lower, whole(target, next));
          sum += real(factorLower, other) * known;
          lower[other] = real(lower, other) - factor * known;
        }
        lower[one] = real(lower, one) - sum;
      }
      let own = 1 / real(factorDiagonal, column);
      for (let one = start; one < end; one += 1) own -= real(factorLower, one) * real(lower, one);
      diagonal[column] = own;
    }
    return diagonal;
  }
}
