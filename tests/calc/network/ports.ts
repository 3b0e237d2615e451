import type { Network } from '../../../src/calc/network/types.ts';
import { invert } from './dense.ts';

/** A net seen from its constant-power loads: open-circuit volts, and volts lost at each by one ampere of each. */
export interface Ports {
  readonly openVolts: readonly number[];
  readonly ohm: readonly (readonly number[])[];
}

/** Reduction to the loads by the full inverse of a modified nodal matrix, node 0 at 0 V. For nets in one piece. */
export function portsOf({ nodes, resistors, sources, loads, injections = [] }: Network): Ports {
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
    put(plus, nodes + index, -1);
    put(minus, nodes + index, 1);
    put(nodes + index, plus, 1);
    put(nodes + index, minus, -1);
    put(nodes + index, nodes + index, ohm);
  }
  const reference = matrix[0];
  if (reference !== undefined) reference[0] = 1;
  const inverse = invert(matrix);
  if (inverse === null) throw new Error('ports: a net in several pieces');

  const entry = (row: number, column: number): number => (column === 0 ? 0 : (inverse[row]?.[column] ?? Number.NaN));
  const right = new Array<number>(size).fill(0);
  for (const [index, { volts }] of sources.entries()) right[nodes + index] = volts;
  for (const { from, to, amps } of injections) {
    right[from] = (right[from] ?? 0) - amps;
    right[to] = (right[to] ?? 0) + amps;
  }
  right[0] = 0;
  const open = (node: number): number =>
    (inverse[node] ?? []).reduce((sum, each, column) => sum + each * (right[column] ?? 0), 0);
  const power = loads.filter(({ law }) => law.kind === 'power');
  return {
    openVolts: power.map(({ plus, minus }) => open(plus) - open(minus)),
    ohm: power.map((one) =>
      power.map(
        (other) =>
          entry(one.plus, other.plus) -
          entry(one.plus, other.minus) -
          entry(one.minus, other.plus) +
          entry(one.minus, other.minus),
      ),
    ),
  };
}

/** Whether a full symmetric matrix is positive definite, by Cholesky's method. */
function isPositiveDefinite(matrix: readonly (readonly number[])[]): boolean {
  const root = matrix.map((row) => row.map(() => 0));
  for (const [row, values] of matrix.entries()) {
    for (let column = 0; column <= row; column += 1) {
      let sum = values[column] ?? 0;
      for (let each = 0; each < column; each += 1) sum -= (root[row]?.[each] ?? 0) * (root[column]?.[each] ?? 0);
      const target = root[row];
      if (target === undefined) return false;
      if (row === column) {
        if (!(sum > 0)) return false;
        target[column] = Math.sqrt(sum);
      } else target[column] = sum / (root[column]?.[column] ?? Number.NaN);
    }
  }
  return true;
}

/** Slopes of power against voltage, scaled: positive definite exactly where the operating point is a stable one. */
export const isStable = ({ ohm }: Ports, watts: readonly number[], volts: readonly number[]): boolean => {
  const root = watts.map((each, load) => Math.sqrt(each) / (volts[load] ?? Number.NaN));
  return isPositiveDefinite(
    ohm.map((row, one) =>
      row.map((each, other) => (one === other ? 1 : 0) - (root[one] ?? 0) * each * (root[other] ?? 0)),
    ),
  );
};

/** Load volts by Newton's method on the full port equations from `start`; null unless it ends at a stable point. */
export function portVolts(ports: Ports, watts: readonly number[], start: readonly number[]): number[] | null {
  const { openVolts, ohm } = ports;
  let volts = [...start];
  for (let round = 0; round < 60; round += 1) {
    const amps = watts.map((each, load) => each / (volts[load] ?? Number.NaN));
    const miss = openVolts.map(
      (open, load) =>
        (volts[load] ?? 0) - open + (ohm[load] ?? []).reduce((sum, each, other) => sum + each * (amps[other] ?? 0), 0),
    );
    const slopes = ohm.map((row, load) =>
      row.map((each, other) => (load === other ? 1 : 0) - (each * (amps[other] ?? 0)) / (volts[other] ?? Number.NaN)),
    );
    const inverse = invert(slopes);
    if (inverse === null) return null;
    const step = inverse.map((row) => row.reduce((sum, each, load) => sum + each * (miss[load] ?? 0), 0));
    volts = volts.map((each, load) => each - (step[load] ?? 0));
    if (!volts.every((each) => each > 0)) return null;
    if (Math.max(...step.map(Math.abs)) < 1e-10) return isStable(ports, watts, volts) ? volts : null;
  }
  return null;
}

/**
 * The share of the watts at which the loads, raised together in small steps from nothing, are no longer carried, or at
 * which `holds` first fails; by bisection, to a part in 1e12.
 */
export function portShare(
  ports: Ports,
  watts: readonly number[],
  most: number,
  holds: (volts: readonly number[]) => boolean = () => true,
): number {
  let share = 0;
  let volts: readonly number[] = ports.openVolts;
  for (let step = most / 16; step > 1e-12 * (share || most); ) {
    const next = portVolts(
      ports,
      watts.map((each) => each * (share + step)),
      volts,
    );
    if (next === null || !holds(next)) step /= 2;
    else {
      share += step;
      volts = next;
      if (share >= most) return most;
    }
  }
  return share;
}
