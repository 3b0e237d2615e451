import { LuDecomposition, Matrix } from 'ml-matrix';
import type { Network } from '../../src/calc/network/types.ts';

/**
 * The baseline: the same Newton's method with a full matrix and dense LU. For nets of one source held between nodes
 * 1 (plus) and 0, and loads of constant power. Volts by node.
 */
export function solveByDenseLu({ nodes, resistors, sources, loads }: Network): Float64Array {
  const volts = new Float64Array(nodes).fill(sources[0]?.volts ?? 0);
  volts[0] = 0;
  const unknowns = nodes - 2;
  const row = (node: number): number => node - 2;
  const at = (node: number): number => volts[node] ?? Number.NaN;
  for (let round = 0; round < 50; round += 1) {
    const slopes = Matrix.zeros(unknowns, unknowns);
    const surplus = Matrix.zeros(unknowns, 1);
    const put = (a: number, b: number, siemens: number, amps: number): void => {
      for (const [one, other, leaving] of [
        [a, b, amps],
        [b, a, -amps],
      ] as const) {
        if (one < 2) continue;
        slopes.set(row(one), row(one), slopes.get(row(one), row(one)) + siemens);
        surplus.set(row(one), 0, surplus.get(row(one), 0) - leaving);
        if (other >= 2) slopes.set(row(one), row(other), slopes.get(row(one), row(other)) - siemens);
      }
    };
    for (const { a, b, ohm } of resistors) put(a, b, 1 / ohm, (at(a) - at(b)) / ohm);
    if (round > 0) {
      for (const { plus, minus, law } of loads) {
        if (law.kind !== 'power') throw new Error('the dense baseline knows constant power only');
        const across = at(plus) - at(minus);
        put(plus, minus, -law.watts / across ** 2, law.watts / across);
      }
    }
    const step = new LuDecomposition(slopes).solve(surplus);
    let longest = 0;
    for (let node = 2; node < nodes; node += 1) {
      const change = step.get(row(node), 0);
      volts[node] = at(node) + change;
      longest = Math.max(longest, Math.abs(change));
    }
    if (round > 1 && longest < 1e-10) return volts;
  }
  throw new Error('the dense baseline did not settle');
}
