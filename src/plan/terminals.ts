import type { Fitting, FittingKind, Plan, Run, TerminalRef } from './schema.ts';

/** Terminals that every fitting of a kind has; a block adds its outputs. */
const FIXED_TERMINALS: Record<FittingKind, readonly string[]> = {
  battery: ['positive', 'negative'],
  fuse: ['in', 'out'],
  passThrough: ['through'],
  block: ['bus'],
  amplifier: ['supply', 'ground', 'remote'],
  ground: ['body'],
};

/** Kinds that sit in a cable: dropped onto a run they split it, deleted they join it again. */
export const INLINE_KINDS: ReadonlySet<FittingKind> = new Set(['fuse', 'passThrough']);

/** The names of a fitting's terminals, in the order in which they are offered. */
export function terminalsOf(fitting: Fitting): readonly string[] {
  const fixed = FIXED_TERMINALS[fitting.kind];
  return fitting.kind === 'block' ? [...fixed, ...fitting.outputs.map((output) => output.terminal)] : fixed;
}

/** 'fittingId.terminal': the key of a terminal as a node of the circuit. */
export const terminalKey = (ref: TerminalRef): string => `${ref.fittingId}.${ref.terminal}`;

/** The fitting a terminal belongs to, or undefined when the plan does not hold it. */
export const fittingById = (plan: Plan, id: string): Fitting | undefined =>
  plan.fittings.find((fitting) => fitting.id === id);

export const runById = (plan: Plan, id: string): Run | undefined => plan.runs.find((run) => run.id === id);
