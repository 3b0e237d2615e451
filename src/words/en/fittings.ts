/** What fittings, terminals and runs are called. */
import type { FittingKind } from '../../plan/schema.ts';

/** Full names, as in sentences and lists. */
export const kinds: Readonly<Record<FittingKind, string>> = {
  battery: 'Battery',
  fuse: 'Fuse',
  passThrough: 'Pass-through',
  block: 'Distribution block',
  amplifier: 'Amplifier',
  ground: 'Ground point',
  breaker: 'Thermal breaker',
  bus: 'Bus bar',
  reducer: 'Reducer',
  load: 'Other load',
  alternator: 'Alternator',
  jumpPost: 'Jump post',
  takeOff: 'Fused take-off',
  charger: 'DC-DC charger',
  relay: 'Isolating relay',
  switch: 'Battery switch',
  capacitor: 'Capacitor',
  continuation: 'Continuation point',
};

/** Short names, for the shelf. */
export const kindsShort: Readonly<Record<FittingKind, string>> = {
  ...kinds,
  block: 'Block',
  ground: 'Ground',
  breaker: 'Breaker',
  load: 'Load',
  takeOff: 'Take-off',
  charger: 'Charger',
  relay: 'Relay',
  switch: 'Switch',
  continuation: 'Continues',
};

/** What the first fuse after a battery is called. */
export const mainFuse = 'Main fuse';
/** Every later one. */
export const nextFuse = 'Fuse';
/** One on a branch, by what it protects. */
export const fuseOf = (consumer: string): string => `${consumer} fuse`;

const TERMINALS: Readonly<Record<string, string>> = {
  positive: 'positive',
  negative: 'negative',
  in: 'in',
  out: 'out',
  through: 'through',
  bus: 'bus',
  supply: 'supply',
  ground: 'ground',
  remote: 'remote',
  body: 'body',
  supply2: 'second supply',
  ground2: 'second ground',
  wide: 'thick end',
  narrow: 'thin end',
  stud: 'stud',
  input: 'input',
  output: 'output',
};

/** 'out3' -> 'output 3'. */
export function terminal(name: string): string {
  const output = /^out(\d+)$/.exec(name);
  return output === null ? (TERMINALS[name] ?? name) : `output ${output[1]}`;
}

/** 'Rear amplifier, supply'. */
export const terminalOf = (fittingName: string, terminalName: string): string =>
  `${fittingName}, ${terminal(terminalName)}`;

/** 'Battery to main fuse': made from the ends, the second name with a small first letter unless it is spelled in capitals. */
export function runName(from: string, to: string): string {
  const second = /^[A-Z][a-z]/.test(to) ? to.charAt(0).toLowerCase() + to.slice(1) : to;
  return `${from} to ${second}`;
}
