/** What is already wired: where a source's cable leads to, and where it could be led on. */
import { fittingById } from '../byId.ts';
import type { Fitting, Plan, TerminalRef } from '../schema.ts';
import { INLINE_KINDS, inlineTerminals, terminalKey } from '../terminals.ts';

const SOURCE_TERMINAL: Partial<Record<Fitting['kind'], string>> = {
  battery: 'positive',
  jumpPost: 'stud',
  takeOff: 'stud',
};

/** The live terminal of a source that cables are taken from; null for any other fitting. */
export function postOf({ id, kind }: Fitting): TerminalRef | null {
  const terminal = SOURCE_TERMINAL[kind];
  return terminal === undefined ? null : { fittingId: id, terminal };
}

export const isJoined = (plan: Plan, ref: TerminalRef): boolean => runsOn(plan, ref).length > 0;

const runsOn = (plan: Plan, ref: TerminalRef) => {
  const key = terminalKey(ref);
  return plan.runs.filter(
    ({ kind, from, to }) => kind === 'power' && (terminalKey(from) === key || terminalKey(to) === key),
  );
};

/** Where a live cable ends open, or a block or bar that it has reached. */
export interface Tip {
  readonly ref: TerminalRef;
  readonly kind: 'open' | 'block' | 'bus';
  /** A fuse or a breaker lies between it and the source. */
  readonly fused: boolean;
}

/** Everything that power cables reach from there: where they could be led on, and whether they feed anything. */
export function tipsFrom(plan: Plan, start: TerminalRef): Tip[] {
  const tips: Tip[] = [];
  const seen = new Set<string>();
  const waiting: { ref: TerminalRef; fused: boolean }[] = [{ ref: start, fused: false }];
  for (let here = waiting.pop(); here !== undefined; here = waiting.pop()) {
    const { ref, fused } = here;
    const key = terminalKey(ref);
    if (seen.has(key)) continue;
    seen.add(key);
    for (const { from, to } of runsOn(plan, ref)) {
      const other = terminalKey(from) === key ? to : from;
      const fitting = fittingById(plan, other.fittingId);
      if (fitting === undefined || seen.has(terminalKey(other))) continue;
      const tip = arrive(plan, fitting, other, fused);
      if (tip === null) continue;
      if ('kind' in tip) tips.push(tip);
      else waiting.push(tip);
    }
  }
  return tips;
}

function arrive(
  plan: Plan,
  fitting: Fitting,
  at: TerminalRef,
  fused: boolean,
): Tip | { ref: TerminalRef; fused: boolean } | null {
  if (fitting.kind === 'block' || fitting.kind === 'bus') {
    return at.terminal === 'bus' ? { ref: at, kind: fitting.kind, fused } : null;
  }
  if (!INLINE_KINDS.has(fitting.kind)) return null;
  const [into, outOf] = inlineTerminals(fitting.kind);
  const next = { fittingId: fitting.id, terminal: at.terminal === into ? outOf : into };
  const isFused = fused || fitting.kind === 'fuse' || fitting.kind === 'breaker';
  const isOpen = into === outOf ? runsOn(plan, next).length < 2 : !isJoined(plan, next);
  return isOpen ? { ref: next, kind: 'open', fused: isFused } : { ref: next, fused: isFused };
}

/** Whether any cable at all ends at that fitting. */
export const isLoose = (plan: Plan, { id }: Fitting): boolean =>
  plan.runs.every(({ from, to }) => from.fittingId !== id && to.fittingId !== id);
