import type { Fitting, FittingKind, TerminalRef } from './schema.ts';

/** Terminals that every fitting of a kind has; a block adds its outputs, an amplifier of two inputs its second pair. */
const FIXED_TERMINALS: Record<FittingKind, readonly string[]> = {
  battery: ['positive', 'negative'],
  fuse: ['in', 'out'],
  passThrough: ['through'],
  block: ['bus'],
  amplifier: ['supply', 'ground', 'remote'],
  ground: ['body'],
  breaker: ['in', 'out'],
  bus: ['bus'],
  reducer: ['wide', 'narrow'],
  load: ['supply', 'ground'],
  alternator: ['positive'],
  jumpPost: ['stud'],
  takeOff: ['stud'],
  charger: ['input', 'output', 'ground'],
  relay: ['in', 'out'],
  switch: ['in', 'out'],
  capacitor: ['positive', 'negative'],
  continuation: ['through'],
};

const SECOND_INPUT: readonly string[] = ['supply2', 'ground2'];

/** Kinds that sit in a cable: dropped onto a run they split it, deleted they join it again. */
const INLINE: readonly FittingKind[] = ['fuse', 'passThrough', 'breaker', 'reducer', 'relay', 'switch'];
export const INLINE_KINDS: ReadonlySet<FittingKind> = new Set(INLINE);

/** Kinds that a cable runs through uncut: what lies on either side is one cable, of one size, without a joint. */
const THROUGH: readonly FittingKind[] = ['passThrough', 'continuation'];
export const THROUGH_KINDS: ReadonlySet<FittingKind> = new Set(THROUGH);

/** Where a run that is split comes in to an inline fitting, and where the rest of it leaves. */
export function inlineTerminals(kind: FittingKind): readonly [into: string, outOf: string] {
  const [into = '', outOf = into] = FIXED_TERMINALS[kind];
  return [into, outOf];
}

/** The names of a fitting's terminals, in the order in which they are offered. */
export function terminalsOf(fitting: Fitting): readonly string[] {
  const fixed = FIXED_TERMINALS[fitting.kind];
  if (fitting.kind === 'block') return [...fixed, ...fitting.outputs.map((output) => output.terminal)];
  return fitting.kind === 'amplifier' && fitting.supplyInputs === 'two' ? [...fixed, ...SECOND_INPUT] : fixed;
}

/** 'fittingId.terminal': the key of a terminal as a node of the circuit. */
export const terminalKey = (ref: TerminalRef): string => `${ref.fittingId}.${ref.terminal}`;
