import type { Network, NetworkSolved } from '../../../src/calc/network/types.ts';

/** By node, the currents of every element that flow into it, less those that flow out of it, A: 0 by Kirchhoff's current law. */
export function surplusAmps(net: Network, solved: NetworkSolved): number[] {
  const into = new Array<number>(net.nodes).fill(0);
  const flow = (from: number, to: number, amps = Number.NaN): void => {
    into[from] = (into[from] ?? 0) - amps;
    into[to] = (into[to] ?? 0) + amps;
  };
  for (const [index, { a, b }] of net.resistors.entries()) flow(a, b, solved.resistorAmps[index]);
  for (const [index, { plus, minus }] of net.loads.entries()) flow(plus, minus, solved.loadAmps[index]);
  for (const [index, { plus, minus }] of net.sources.entries()) flow(minus, plus, solved.sourceAmps[index]);
  for (const { from, to, amps } of net.injections ?? []) flow(from, to, amps);
  return into;
}
