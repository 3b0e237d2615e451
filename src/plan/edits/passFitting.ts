import { fittingById, runsAt } from '../byId.ts';
import type { Fitting, Plan, Point, Run, TerminalRef } from '../schema.ts';
import { INLINE_KINDS } from '../terminals.ts';
import { freeInCable } from './cable.ts';
import { joinRuns } from './joinRuns.ts';
import { removeFitting } from './removeFitting.ts';
import { splitRun } from './splitRun.ts';

/** A run of the cable that a fitting sits in, past the fitting at an end of its own two. */
export interface RunBeyond {
  readonly run: Run;
  /** The end that is the nearer one along the cable. */
  readonly nearEnd: 'from' | 'to';
  /** The fitting's own two runs: the one that the way there leads along, and the one that it leaves behind. */
  readonly ahead: Run;
  readonly behind: Run;
}

const terminalAt = ({ from, to }: Run, id: string): string => (from.fittingId === id ? from : to).terminal;

/**
 * The cable on which an inline fitting can slide on past the fittings that it is joined to: run by run, each way for as
 * long as it leads through inline fittings that have two runs. It ends at what is locked, and at another kind of run.
 */
export function runsBeyond(plan: Plan, id: string): readonly RunBeyond[] {
  const inCable = freeInCable(plan, id);
  if (inCable === null) return [];
  const { fitting, first, second } = inCable;
  // where the two cannot be one run, the fitting cannot leave them
  if (joinRuns(plan, fitting, first, second) === null) return [];
  const known = new Set([first, second]);
  return [...runsThrough(plan, fitting, second, first, known), ...runsThrough(plan, fitting, first, second, known)];
}

/** Those that follow on one of the fitting's runs; `known` keeps a ring from being gone round again. */
function runsThrough(plan: Plan, { id }: Fitting, behind: Run, ahead: Run, known: Set<Run>): RunBeyond[] {
  const found: RunBeyond[] = [];
  let far: TerminalRef = ahead.from.fittingId === id ? ahead.to : ahead.from;
  for (let last = ahead; ; ) {
    const run = nextRun(plan, far.fittingId, last);
    if (run === null || known.has(run) || run.locked || run.kind !== ahead.kind) return found;
    known.add(run);
    const nearEnd = run.from.fittingId === far.fittingId ? 'from' : 'to';
    found.push({ run, nearEnd, ahead, behind });
    far = nearEnd === 'from' ? run.to : run.from;
    last = run;
  }
}

/** The other run at an inline fitting that has two; null when it may not be passed. */
function nextRun(plan: Plan, id: string, run: Run): Run | null {
  const fitting = fittingById(plan, id);
  const runs = runsAt(plan, id);
  if (fitting === undefined || !INLINE_KINDS.has(fitting.kind) || fitting.locked || runs.length !== 2) return null;
  return runs.find((other) => other !== run) ?? null;
}

/**
 * Slides an inline fitting on past others of its cable, into a run beyond them, at the run's nearest point to `at`: its
 * two runs become one as when it is removed, and that run two as when it is dropped there. It stays what it is, and
 * keeps the terminal towards the source there. The cable that it leaves behind goes on where it stood, with that
 * cable's conductor, as when it slides. The same plan when the run is none of that cable.
 */
export function passFitting(plan: Plan, id: string, runId: string, at: Point, newRunId: string): Plan {
  const fitting = fittingById(plan, id);
  const beyond = runsBeyond(plan, id).find(({ run }) => run.id === runId);
  if (fitting === undefined || beyond === undefined) return plan;
  const { nearEnd, ahead, behind } = beyond;
  const without = removeFitting(plan, id);
  const split = splitRun(without, runId, at, fitting, newRunId);
  if (split === without) return plan;
  const [into, outOf] = nearEnd === 'from' ? [behind, ahead] : [ahead, behind];
  const settled = (run: Run): Run => {
    if (run.id === runId) return { ...run, to: { fittingId: id, terminal: terminalAt(into, id) } };
    if (run.id === newRunId) return { ...run, from: { fittingId: id, terminal: terminalAt(outOf, id) } };
    const isJoined = run.id === ahead.id || run.id === behind.id;
    return isJoined ? { ...run, conductor: behind.conductor } : run;
  };
  return {
    ...split,
    // in its own place of the list
    fittings: plan.fittings.map((other) => (other === fitting ? (fittingById(split, id) ?? other) : other)),
    runs: split.runs.map(settled),
  };
}
