/** Joining two terminals by a run: what may be joined, and what kind of run it makes. */
import { fittingById } from '../plan/byId.ts';
import { newId, newRun } from '../plan/create.ts';
import { addRun } from '../plan/edits/addRun.ts';
import { sharedSheet } from '../plan/runs.ts';
import { MAX_BENDS, MAX_ITEMS, type Plan, type Point, type RunKind, type TerminalRef } from '../plan/schema.ts';
import { terminalKey, terminalsOf } from '../plan/terminals.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';
import { wholePlan } from './whole.ts';

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
  if (sheetBetween(plan, from, to) === null) return 'refused';
  return plan.runs.length >= MAX_ITEMS ? 'planFull' : null;
}

/**
 * The kind of the run between two terminals. An amplifier's remote makes it remote; a positive post, a stud or a supply
 * makes it power, also where the other end is a ground (a short is not to look like a ground lead); a ground terminal,
 * a ground point or a negative post makes it ground; fittings without a side take the kind of what is joined to them.
 */
export function runKindBetween(plan: Plan, from: TerminalRef, to: TerminalRef): RunKind {
  if (isFromFactory(plan, from, to)) return 'factory';
  const told = [from, to].map(({ terminal }) => sideOfTerminal(terminal));
  if (told.includes('remote')) return 'remote';
  if (told.includes('power')) return 'power';
  if (told.includes('ground')) return 'ground';
  const near = [from, to].flatMap((ref) => plan.runs.filter((run) => touches(run, ref)).map((run) => run.kind));
  const [first] = near;
  // what is added to the vehicle's own cable is not the vehicle's own
  return first !== undefined && first !== 'factory' && near.every((kind) => kind === first) ? first : 'power';
}

/** A sheet on which both terminals stand; null when there is none. */
function sheetBetween(plan: Plan, from: TerminalRef, to: TerminalRef): string | null {
  const [one, other] = [fittingById(plan, from.fittingId), fittingById(plan, to.fittingId)];
  return one === undefined || other === undefined ? null : sharedSheet(one, other);
}

/**
 * Joins two terminals by a new run and selects it: one step of history. `kind` null takes it from the terminals, and
 * `onSheetId` null the sheet on which both stand.
 */
export function connect(
  desk: Desk,
  from: TerminalRef,
  to: TerminalRef,
  bends: readonly Point[],
  kind: RunKind | null,
  name: string,
  onSheetId: string | null = null,
): ConnectResult {
  const plan = wholePlan(desk.getState());
  const reason = bends.length > MAX_BENDS ? 'tooManyBends' : connectRefusal(plan, from, to);
  if (reason !== null) return { ok: false, reason };
  const runId = newId();
  const sheetId = onSheetId ?? sheetBetween(plan, from, to) ?? '';
  const run = newRun({ id: runId, name, kind: kind ?? runKindBetween(plan, from, to), sheetId, from, to, bends });
  const isDone = commit(desk, 'connect', (before) => addRun(before, run), { selection: { kind: 'run', id: runId } });
  return isDone ? { ok: true, runId } : { ok: false, reason: 'refused' };
}

function isHeld(plan: Plan, ref: TerminalRef): boolean {
  const fitting = fittingById(plan, ref.fittingId);
  return fitting !== undefined && terminalsOf(fitting).includes(ref.terminal);
}

function touches(run: { from: TerminalRef; to: TerminalRef }, { fittingId }: Pick<TerminalRef, 'fittingId'>): boolean {
  return run.from.fittingId === fittingId || run.to.fittingId === fittingId;
}

/** The side a terminal is on by its name. The rest, of fuses, blocks and the like, stand on either side. */
const SIDE_OF_TERMINAL: Readonly<Record<string, RunKind>> = {
  positive: 'power',
  stud: 'power',
  supply: 'power',
  supply2: 'power',
  input: 'power',
  output: 'power',
  negative: 'ground',
  ground: 'ground',
  ground2: 'ground',
  body: 'ground',
  remote: 'remote',
};

/** The side a terminal is on, whatever is joined to it; null where that decides. */
export const sideOfTerminal = (terminal: string): RunKind | null => SIDE_OF_TERMINAL[terminal] ?? null;

/**
 * An alternator and the vehicle's own battery (the one with the factory strap) are joined from the factory; a second
 * cable beside that one is the user's.
 */
function isFromFactory(plan: Plan, from: TerminalRef, to: TerminalRef): boolean {
  const ends = [from, to].map(({ fittingId }) => fittingById(plan, fittingId));
  const alternator = ends.find((fitting) => fitting?.kind === 'alternator');
  const battery = ends.find((fitting) => fitting?.kind === 'battery' && fitting.strap !== null);
  if (alternator === undefined || battery === undefined) return false;
  const hasOne = plan.runs.some((run) => run.kind === 'factory' && touches(run, { fittingId: alternator.id }));
  return !hasOne && ![from, to].some(({ terminal }) => terminal === 'negative');
}
