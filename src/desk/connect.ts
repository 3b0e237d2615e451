/** Joining two terminals by a run: what may be joined, and what kind of run it makes. */
import { newId, newRun } from '../plan/create.ts';
import { addRun } from '../plan/edits/addRun.ts';
import { MAX_BENDS, MAX_ITEMS, type Plan, type Point, type RunKind, type TerminalRef } from '../plan/schema.ts';
import { fittingById, terminalKey, terminalsOf } from '../plan/terminals.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';

/** 'refused': the plan itself will not have it, as between two sheets or with a bend out of bounds. */
export type ConnectRefusal = 'sameFitting' | 'alreadyJoined' | 'gone' | 'tooManyBends' | 'planFull' | 'refused';

export type ConnectResult = { ok: true; runId: string } | { ok: false; reason: ConnectRefusal };

/** Why two terminals cannot be joined, or null when they can. */
export function connectRefusal(plan: Plan, from: TerminalRef, to: TerminalRef): ConnectRefusal | null {
  if (![from, to].every((ref) => isHeld(plan, ref))) return 'gone';
  if (from.fittingId === to.fittingId) return 'sameFitting';
  const ends = [terminalKey(from), terminalKey(to)];
  const joined = plan.runs.some((run) => ends.includes(terminalKey(run.from)) && ends.includes(terminalKey(run.to)));
  if (joined) return 'alreadyJoined';
  const [start, end] = [from, to].map(({ fittingId }) => fittingById(plan, fittingId)?.sheetId);
  if (start !== end) return 'refused';
  return plan.runs.length >= MAX_ITEMS ? 'planFull' : null;
}

/**
 * The kind of the run between two terminals. An amplifier's remote makes it remote; a positive post or a supply makes
 * it power, also where the other end is a ground (a short is not to look like a ground lead); an amplifier's ground, a
 * ground point or a negative post makes it ground; fittings without a side take the kind of what is joined to them.
 */
export function runKindBetween(plan: Plan, from: TerminalRef, to: TerminalRef): RunKind {
  const told = [from, to].map((ref) => kindOfTerminal(plan, ref));
  if (told.includes('remote')) return 'remote';
  if (told.includes('power')) return 'power';
  if (told.includes('ground')) return 'ground';
  const near = [from, to].flatMap((ref) => plan.runs.filter((run) => touches(run, ref)).map((run) => run.kind));
  const [first] = near;
  return first !== undefined && near.every((kind) => kind === first) ? first : 'power';
}

/** Joins two terminals by a new run and selects it: one step of history. `kind` null takes it from the terminals. */
export function connect(
  desk: Desk,
  from: TerminalRef,
  to: TerminalRef,
  bends: readonly Point[],
  kind: RunKind | null,
  name: string,
): ConnectResult {
  const { plan } = desk.getState();
  const reason = bends.length > MAX_BENDS ? 'tooManyBends' : connectRefusal(plan, from, to);
  if (reason !== null) return { ok: false, reason };
  const runId = newId();
  const sheetId = fittingById(plan, from.fittingId)?.sheetId ?? '';
  const run = newRun({ id: runId, name, kind: kind ?? runKindBetween(plan, from, to), sheetId, from, to, bends });
  const isDone = commit(desk, 'connect', (before) => addRun(before, run), { selection: { kind: 'run', id: runId } });
  return isDone ? { ok: true, runId } : { ok: false, reason: 'refused' };
}

function isHeld(plan: Plan, ref: TerminalRef): boolean {
  const fitting = fittingById(plan, ref.fittingId);
  return fitting !== undefined && terminalsOf(fitting).includes(ref.terminal);
}

function touches(run: { from: TerminalRef; to: TerminalRef }, ref: TerminalRef): boolean {
  return run.from.fittingId === ref.fittingId || run.to.fittingId === ref.fittingId;
}

function kindOfTerminal(plan: Plan, ref: TerminalRef): RunKind | null {
  const kind = fittingById(plan, ref.fittingId)?.kind;
  if (kind === 'ground') return 'ground';
  if (kind === 'battery') return ref.terminal === 'negative' ? 'ground' : 'power';
  if (kind !== 'amplifier') return null;
  if (ref.terminal === 'remote') return 'remote';
  return ref.terminal === 'ground' ? 'ground' : 'power';
}
