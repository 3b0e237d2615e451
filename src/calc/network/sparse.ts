import { add, real, whole } from './arrays.ts';
import { minimumDegree } from './order.ts';

/** Where a coupling between two unknowns sits in the matrix: -1 where an end is a reference and has no row. */
export interface Slot {
  readonly first: number;
  readonly second: number;
  readonly off: number;
}

/**
 * A symmetric sparse matrix that can be filled and factored again and again over one pattern.
 * The pattern (order, fill, and where every update lands) is worked out once.
 */
export class SparseSymmetric {
  readonly size: number;
  /** Place of each unknown in the order of elimination. */
  private readonly place: Int32Array;
  private readonly columnStart: Int32Array;
  private readonly row: Int32Array;
  /** For every pair of rows in a column, in order of elimination, the entry its update lands on. */
  private readonly target: Int32Array;
  private readonly diagonal: Float64Array;
  private readonly lower: Float64Array;
  private readonly factorDiagonal: Float64Array;
  private readonly factorLower: Float64Array;
  private readonly work: Float64Array;

  constructor(size: number, couplings: readonly (readonly [number, number])[]) {
    this.size = size;
    const neighbours = Array.from({ length: size }, () => new Set<number>());
    for (const [one, other] of couplings) {
      if (one === other) continue;
      neighbours[one]?.add(other);
      neighbours[other]?.add(one);
    }
    const { order, remaining } = minimumDegree(neighbours);
    this.place = new Int32Array(size);
    for (const [index, vertex] of order.entries()) this.place[vertex] = index;
    const columns = remaining.map((vertices) =>
      vertices.map((vertex) => whole(this.place, vertex)).sort((a, b) => a - b),
    );
    this.columnStart = new Int32Array(size + 1);
    for (const [column, rows] of columns.entries()) {
      this.columnStart[column + 1] = whole(this.columnStart, column) + rows.length;
    }
    this.row = Int32Array.from(columns.flat());
    this.target = Int32Array.from(this.targets(columns));
    this.diagonal = new Float64Array(size);
    this.factorDiagonal = new Float64Array(size);
    this.lower = new Float64Array(this.row.length);
    this.factorLower = new Float64Array(this.row.length);
    this.work = new Float64Array(size);
  }

  private targets(columns: readonly (readonly number[])[]): number[] {
    const targets: number[] = [];
    for (const rows of columns) {
      for (const [index, column] of rows.entries()) {
        for (let other = index + 1; other < rows.length; other += 1)
          targets.push(this.entry(column, rows[other] ?? -1));
      }
    }
    return targets;
  }

  /** Entry of a row in a column; the rows of a column ascend. */
  private entry(column: number, row: number): number {
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

  /** Looks up where a coupling of the pattern is stamped; -1 stands for a reference. */
  slot(one: number, other: number): Slot {
    const first = one < 0 ? -1 : whole(this.place, one);
    const second = other < 0 ? -1 : whole(this.place, other);
    const inside = first >= 0 && second >= 0 && first !== second;
    return { first, second, off: inside ? this.entry(Math.min(first, second), Math.max(first, second)) : -1 };
  }

  clear(): void {
    this.diagonal.fill(0);
    this.lower.fill(0);
  }

  /** Adds a conductance between the two unknowns of a slot. */
  stamp({ first, second, off }: Slot, siemens: number): void {
    if (first === second) return;
    if (first >= 0) add(this.diagonal, first, siemens);
    if (second >= 0) add(this.diagonal, second, siemens);
    if (off >= 0) add(this.lower, off, -siemens);
  }

  /** Factors into L D L^T. False when a pivot is not clearly positive: the matrix is not positive definite. */
  factor(): boolean {
    const { columnStart, row, target, factorDiagonal, factorLower, diagonal } = this;
    factorDiagonal.set(diagonal);
    factorLower.set(this.lower);
    let next = 0;
    for (let column = 0; column < this.size; column += 1) {
      const pivot = real(factorDiagonal, column);
      // A pivot that cancelled to the last digits of its own entry carries no sign.
      if (!(pivot > 1e-13 * Math.abs(real(diagonal, column)))) return false;
      const end = whole(columnStart, column + 1);
      for (let one = whole(columnStart, column); one < end; one += 1) {
        const entry = real(factorLower, one);
        const scaled = entry / pivot;
        add(factorDiagonal, whole(row, one), -entry * scaled);
        for (let other = one + 1; other < end; other += 1) {
          add(factorLower, whole(target, next), -scaled * real(factorLower, other));
          next += 1;
        }
        factorLower[one] = scaled;
      }
    }
    return true;
  }

  /** Solves the factored system; `rightSide` is by unknown and is replaced by the solution. */
  solve(rightSide: Float64Array): void {
    const { columnStart, row, factorDiagonal, factorLower, place, work, size } = this;
    for (let unknown = 0; unknown < size; unknown += 1) work[whole(place, unknown)] = real(rightSide, unknown);
    for (let column = 0; column < size; column += 1) {
      const value = real(work, column);
      const end = whole(columnStart, column + 1);
      for (let entry = whole(columnStart, column); entry < end; entry += 1)
        add(work, whole(row, entry), -real(factorLower, entry) * value);
    }
    for (let column = size - 1; column >= 0; column -= 1) {
      let value = real(work, column) / real(factorDiagonal, column);
      const end = whole(columnStart, column + 1);
      for (let entry = whole(columnStart, column); entry < end; entry += 1)
        value -= real(factorLower, entry) * real(work, whole(row, entry));
      work[column] = value;
    }
    for (let unknown = 0; unknown < size; unknown += 1) rightSide[unknown] = real(work, whole(place, unknown));
  }
}
