import type { Network } from '../../../src/calc/network/types.ts';

/** Inverse of a full matrix by Gauss-Jordan elimination with row pivoting; null when it is singular. */
export function invert(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  const rows = matrix.map((row, index) => [...row, ...Array.from({ length: size }, (_, at) => (at === index ? 1 : 0))]);
  for (let pivot = 0; pivot < size; pivot += 1) {
    const heights = rows.map((row, index) => (index < pivot ? 0 : Math.abs(row[pivot] ?? 0)));
    const best = heights.indexOf(Math.max(...heights));
    const chosen = rows[best] ?? [];
    const divisor = chosen[pivot] ?? 0;
    if (Math.abs(divisor) < 1e-12) return null;
    rows[best] = rows[pivot] ?? [];
    const scaled = chosen.map((value) => value / divisor);
    rows[pivot] = scaled;
    for (const [index, row] of rows.entries()) {
      const factor = row[pivot] ?? 0;
      if (index === pivot || factor === 0) continue;
      rows[index] = row.map((value, column) => value - factor * (scaled[column] ?? 0));
    }
  }
  return rows.map((row) => row.slice(size));
}

const times = (matrix: readonly (readonly number[])[], right: readonly number[]): number[] =>
  matrix.map((row) => row.reduce((total, value, column) => total + value * (right[column] ?? 0), 0));

/** Solves a full system by its inverse; null when it is singular. */
export function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const inverse = invert(matrix);
  return inverse === null ? null : times(inverse, right);
}

/**
 * The second method the solver is held against: modified nodal analysis with a row for every source, a full matrix,
 * and constant-power loads by plain repetition (each a current of watts / last voltage). Node 0 is the reference.
 * For nets in one piece. Returns volts against node 0, or null when the repetition does not settle.
 */
export function solveByRepetition({ nodes, resistors, sources, loads, injections = [] }: Network): number[] | null {
  const size = nodes + sources.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const put = (row: number, column: number, value: number): void => {
    const cells = matrix[row];
    if (cells !== undefined && row !== 0 && column !== 0) cells[column] = (cells[column] ?? 0) + value;
  };
  const conduct = (a: number, b: number, siemens: number): void => {
    put(a, a, siemens);
    put(b, b, siemens);
    put(a, b, -siemens);
    put(b, a, -siemens);
  };
  for (const { a, b, ohm } of resistors) conduct(a, b, 1 / ohm);
  for (const { plus, minus, law } of loads) if (law.kind === 'current') conduct(plus, minus, law.amps / law.atVolts);
  for (const [index, { plus, minus, ohm }] of sources.entries()) {
    const row = nodes + index;
    put(plus, row, -1);
    put(minus, row, 1);
    put(row, plus, 1);
    put(row, minus, -1);
    put(row, row, ohm);
  }
  const reference = matrix[0];
  if (reference !== undefined) reference[0] = 1;

  const inverse = invert(matrix);
  if (inverse === null) return null;
  let volts = new Array<number>(nodes).fill(0);
  for (let round = 0; round < 400; round += 1) {
    const right = new Array<number>(size).fill(0);
    for (const [index, source] of sources.entries()) right[nodes + index] = source.volts;
    for (const { plus, minus, law } of loads) {
      if (law.kind !== 'power' || round === 0) continue;
      const amps = law.watts / ((volts[plus] ?? 0) - (volts[minus] ?? 0));
      right[plus] = (right[plus] ?? 0) - amps;
      right[minus] = (right[minus] ?? 0) + amps;
    }
    for (const { from, to, amps } of injections) {
      right[from] = (right[from] ?? 0) - amps;
      right[to] = (right[to] ?? 0) + amps;
    }
    right[0] = 0;
    const next = times(inverse, right).slice(0, nodes);
    const moved = Math.max(...next.map((value, node) => Math.abs(value - (volts[node] ?? 0))));
    volts = next;
    if (round > 0 && moved < 1e-11) return volts;
  }
  return null;
}
