import { whole } from './arrays.ts';
import { Beside, Row } from './beside.ts';

/** Order in which to eliminate the unknowns, and the neighbours each one has left when its turn comes. */
export interface Elimination {
  readonly order: Int32Array;
  /** The neighbours left to order[k] stand in `left` from start[k] to start[k + 1]. */
  readonly start: Int32Array;
  readonly left: Int32Array;
}

/** Vertices by number of neighbours, so that the next of least degree is found without a search through all. */
class DegreeQueue {
  private readonly first: Int32Array;
  private readonly after: Int32Array;
  private readonly before: Int32Array;
  private lowest = 0;

  constructor(size: number) {
    this.first = new Int32Array(size + 1).fill(-1);
    this.after = new Int32Array(size);
    this.before = new Int32Array(size);
  }

  put(vertex: number, degree: number): void {
    const next = whole(this.first, degree);
    this.after[vertex] = next;
    this.before[vertex] = -1;
    if (next >= 0) this.before[next] = vertex;
    this.first[degree] = vertex;
    this.lowest = Math.min(this.lowest, degree);
  }

  take(vertex: number, degree: number): void {
    const next = whole(this.after, vertex);
    const previous = whole(this.before, vertex);
    if (previous < 0) this.first[degree] = next;
    else this.after[previous] = next;
    if (next >= 0) this.before[next] = previous;
  }

  /** A vertex of the least degree; asked while some are left. */
  least(): number {
    while (whole(this.first, this.lowest) < 0) this.lowest += 1;
    return whole(this.first, this.lowest);
  }
}

/**
 * Minimum degree: always eliminates an unknown with the fewest neighbours left, and joins those to one another,
 * as elimination does in the matrix. A tree loses its leaves first and fills nothing in. Takes the couplings as pairs
 * of unknowns below `size`, one of `first` with one of `second`; a pair may come twice. Time and space are those of
 * one factorisation: in proportion to the unknowns where the net is near a tree.
 */
export function minimumDegree(size: number, first: Int32Array, second: Int32Array): Elimination {
  const beside = new Beside(size);
  for (let index = 0; index < first.length; index += 1) beside.join(whole(first, index), whole(second, index));
  const { degree } = beside;
  const queue = new DegreeQueue(size);
  for (let vertex = size - 1; vertex >= 0; vertex -= 1) queue.put(vertex, whole(degree, vertex));

  const order = new Int32Array(size);
  const start = new Int32Array(size + 1);
  const left = new Row();
  const gone = new Uint8Array(size);
  for (let turn = 0; turn < size; turn += 1) {
    const vertex = queue.least();
    queue.take(vertex, whole(degree, vertex));
    gone[vertex] = 1;
    order[turn] = vertex;
    const from = left.length;
    beside.collect(vertex, gone, left);
    for (let one = from; one < left.length; one += 1) queue.take(left.at(one), whole(degree, left.at(one)));
    for (let one = from; one < left.length; one += 1) {
      const neighbour = left.at(one);
      for (let other = one + 1; other < left.length; other += 1) beside.join(neighbour, left.at(other));
      degree[neighbour] = whole(degree, neighbour) - 1;
      queue.put(neighbour, whole(degree, neighbour));
    }
    start[turn + 1] = left.length;
  }
  return { order, start, left: left.toArray() };
}
