import type { Network } from './types.ts';

/** Throws on what no plan can mean: a negative or missing number, a node outside the net. */
export function checkNetwork({ nodes, resistors, sources, loads, injections = [] }: Network): void {
  const node = (index: number): boolean => Number.isInteger(index) && index >= 0 && index < nodes;
  const amount = (value: number): boolean => Number.isFinite(value) && value >= 0;
  const sound =
    resistors.every(({ a, b, ohm }) => node(a) && node(b) && amount(ohm)) &&
    sources.every(
      ({ plus, minus, volts, ohm }) => node(plus) && node(minus) && Number.isFinite(volts) && amount(ohm),
    ) &&
    loads.every(({ plus, minus, law }) => {
      const drawn =
        law.kind === 'power' ? amount(law.watts) : amount(law.amps) && amount(law.atVolts) && law.atVolts > 0;
      return node(plus) && node(minus) && drawn;
    }) &&
    injections.every(({ from, to, amps }) => node(from) && node(to) && Number.isFinite(amps));
  if (!sound) throw new RangeError('network: a node outside the net, or a value that is negative or not a number');
}
