/** Feeds and returns as someone would lay them, so that enough of the plans at random carry current. */
import type { Fitting, FittingKind, TerminalRef } from '../../src/plan/schema.ts';

/** Where a feed comes in to a fitting, and where it goes on from; null: it does not. */
const WAYS: Readonly<Record<FittingKind, readonly [into: string | null, onward: string | null]>> = {
  battery: ['positive', 'positive'],
  fuse: ['in', 'out'],
  passThrough: ['through', 'through'],
  block: ['bus', 'out1'],
  amplifier: ['supply', null],
  ground: [null, null],
  breaker: ['in', 'out'],
  bus: ['bus', 'bus'],
  reducer: ['wide', 'narrow'],
  load: ['supply', null],
  alternator: [null, 'positive'],
  jumpPost: ['stud', 'stud'],
  takeOff: ['stud', 'stud'],
  charger: ['input', 'output'],
  relay: ['in', 'out'],
  switch: ['in', 'out'],
  capacitor: ['positive', null],
  continuation: ['through', 'through'],
};

const RETURNS: Readonly<Partial<Record<FittingKind, string>>> = {
  battery: 'negative',
  amplifier: 'ground',
  load: 'ground',
  charger: 'ground',
  capacitor: 'negative',
};

export interface Ends {
  readonly isReturn: boolean;
  readonly from: TerminalRef;
  readonly to: TerminalRef;
}

/**
 * For each fitting a feed from one before it, which one `pick` says (often the nearest), and a return to the first
 * ground on its sheet.
 */
export function wiringOf(fittings: readonly Fitting[], pick: (index: number) => number): Ends[] {
  return fittings.flatMap((fitting, index): Ends[] => {
    const isNear = (other: Fitting): boolean => other.sheetId === fitting.sheetId;
    const ref = (fittingId: string, terminal: string): TerminalRef => ({ fittingId, terminal });
    const ends: Ends[] = [];
    const [into] = WAYS[fitting.kind];
    const feeders = fittings.slice(0, index).filter((other) => isNear(other) && WAYS[other.kind][1] !== null);
    const feeder = feeders.at(-1 - (pick(index) % Math.max(1, feeders.length)));
    const onward = feeder === undefined ? null : WAYS[feeder.kind][1];
    if (into !== null && feeder !== undefined && onward !== null) {
      ends.push({ isReturn: false, from: ref(feeder.id, onward), to: ref(fitting.id, into) });
    }
    const back = RETURNS[fitting.kind];
    const bolt = fittings.find((other) => other.kind === 'ground' && isNear(other));
    if (back !== undefined && bolt !== undefined) {
      ends.push({ isReturn: true, from: ref(fitting.id, back), to: ref(bolt.id, 'body') });
    }
    return ends;
  });
}
