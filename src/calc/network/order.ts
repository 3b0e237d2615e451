/** Order in which to eliminate the unknowns, and the neighbours each one has left when its turn comes. */
export interface Elimination {
  readonly order: readonly number[];
  readonly remaining: readonly (readonly number[])[];
}

/** Vertices by number of neighbours, so that the next of least degree is found without a search through all. */
class DegreeQueue {
  private readonly buckets: Set<number>[] = [];
  private lowest = 0;

  put(vertex: number, degree: number): void {
    while (this.buckets.length <= degree) this.buckets.push(new Set());
    this.buckets[degree]?.add(vertex);
    this.lowest = Math.min(this.lowest, degree);
  }

  move(vertex: number, from: number, to: number): void {
    if (from === to) return;
    this.buckets[from]?.delete(vertex);
    this.put(vertex, to);
  }

  take(): number | undefined {
    for (; this.lowest < this.buckets.length; this.lowest += 1) {
      const bucket = this.buckets[this.lowest];
      for (const vertex of bucket ?? []) {
        bucket?.delete(vertex);
        return vertex;
      }
    }
    return undefined;
  }
}

/**
 * Minimum degree: always eliminates an unknown with the fewest neighbours left, and joins those to one another,
 * as elimination does in the matrix. A tree loses its leaves first and fills nothing in.
 */
export function minimumDegree(neighbours: readonly Set<number>[]): Elimination {
  const queue = new DegreeQueue();
  for (const [vertex, set] of neighbours.entries()) queue.put(vertex, set.size);
  const order: number[] = [];
  const remaining: number[][] = [];
  for (let vertex = queue.take(); vertex !== undefined; vertex = queue.take()) {
    const left = [...(neighbours[vertex] ?? [])];
    for (const one of left) {
      const set = neighbours[one];
      if (set === undefined) continue;
      const before = set.size;
      set.delete(vertex);
      for (const other of left) if (other !== one) set.add(other);
      queue.move(one, before, set.size);
    }
    order.push(vertex);
    remaining.push(left);
  }
  return { order, remaining };
}
