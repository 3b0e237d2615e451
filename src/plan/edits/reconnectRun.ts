import type { Plan, TerminalRef } from '../schema.ts';
import { runById } from '../terminals.ts';
import { withRun } from './accept.ts';

/** Joins one end of a run to another terminal of its sheet; a locked run stays where it is. */
export function reconnectRun(plan: Plan, runId: string, end: 'from' | 'to', ref: TerminalRef): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked) return plan;
  return withRun(plan, run, { ...run, [end]: ref });
}
