/** Which terminal of a fitting a run may start from or end at, so that only real choices are asked about. */

import { connectRefusal, sideOfTerminal } from '../../desk/connect.ts';
import { type RunEnd, reconnectRefusal, withoutRun } from '../../desk/reconnect.ts';
import { fittingById, runsAt } from '../../plan/byId.ts';
import type { FittingKind, Plan, RunKind, TerminalRef } from '../../plan/schema.ts';
import { terminalKey, terminalsOf } from '../../plan/terminals.ts';

/** What a terminal is for; null when it takes either side and nothing is joined to its fitting yet. */
function sideOf(plan: Plan, ref: TerminalRef): RunKind | null {
  const told = sideOfTerminal(ref.terminal);
  if (told !== null) return told;
  const [first, ...others] = runsAt(plan, ref.fittingId).map(({ kind }) => (kind === 'factory' ? 'power' : kind));
  return first !== undefined && others.every((kind) => kind === first) ? first : null;
}

export function isTaken(plan: Plan, ref: TerminalRef): boolean {
  const key = terminalKey(ref);
  return plan.runs.some(({ from, to }) => terminalKey(from) === key || terminalKey(to) === key);
}

/** Every terminal of a fitting. */
export const refsOf = (plan: Plan, fittingId: string): TerminalRef[] => {
  const fitting = fittingById(plan, fittingId);
  return fitting === undefined ? [] : terminalsOf(fitting).map((terminal) => ({ fittingId, terminal }));
};

/** Kinds with two ends that are alike. */
const TWO_ENDED: ReadonlySet<FittingKind | undefined> = new Set<FittingKind>(['fuse', 'breaker', 'relay', 'switch']);

const isTwoEnded = (plan: Plan, fittingId: string): boolean => TWO_ENDED.has(fittingById(plan, fittingId)?.kind);

/** A fuse has two ends that are alike: the free one is meant, the way the run is drawn deciding which of two. */
function freeEnd(plan: Plan, refs: readonly TerminalRef[], first: 'in' | 'out'): TerminalRef[] {
  const free = refs.filter((ref) => !isTaken(plan, ref));
  const [only] = free.toSorted((a) => (a.terminal === first ? -1 : 1));
  return only === undefined ? [...refs] : [only];
}

/** Where a run may start: one terminal is meant without asking, several are offered. */
export function startsAt(plan: Plan, fittingId: string): TerminalRef[] {
  const refs = refsOf(plan, fittingId);
  return isTwoEnded(plan, fittingId) ? freeEnd(plan, refs, 'out') : refs;
}

/**
 * Where a run from that terminal may end. A supply is not offered to a ground lead, nor a post that is joined to it
 * already; where nothing fits, everything that can be joined is offered, since the plan may be meant to show a fault.
 */
export function endsAt(plan: Plan, from: TerminalRef, fittingId: string): TerminalRef[] {
  const joinable = refsOf(plan, fittingId).filter((to) => connectRefusal(plan, from, to) === null);
  return meant(plan, sideOf(plan, from), joinable, fittingId, 'in');
}

/**
 * Where an end of a run may be joined instead of where it is, in the same way; the other end stays. The terminal it is
 * at is among them, so that it can be brought back.
 */
export function newEndsAt(plan: Plan, runId: string, end: RunEnd, fittingId: string): TerminalRef[] {
  const run = plan.runs.find(({ id }) => id === runId);
  if (run === undefined) return [];
  const joinable = refsOf(plan, fittingId).filter((ref) => reconnectRefusal(plan, runId, end, ref) === null);
  if (run[end].fittingId === fittingId && isTwoEnded(plan, fittingId)) return [run[end]];
  const side = run.kind === 'factory' ? 'power' : run.kind;
  return meant(withoutRun(plan, runId), side, joinable, fittingId, end === 'from' ? 'out' : 'in');
}

/** Those of the side that is meant; where none is, all of them. */
function meant(
  plan: Plan,
  side: RunKind | null,
  joinable: readonly TerminalRef[],
  fittingId: string,
  first: 'in' | 'out',
): TerminalRef[] {
  const fitting = joinable.filter((to) => {
    const other = sideOf(plan, to);
    return side === null || other === null || side === other;
  });
  const offered = fitting.length > 0 ? fitting : joinable;
  return isTwoEnded(plan, fittingId) ? freeEnd(plan, offered, first) : [...offered];
}
