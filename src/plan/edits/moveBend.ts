import { runById } from '../byId.ts';
import type { Plan, Point } from '../schema.ts';
import { withRun } from './accept.ts';

/** Moves a bend; a locked run stays as it is, and a taped length stays whatever the drawing says. */
export function moveBend(plan: Plan, runId: string, index: number, at: Point): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked || run.bends[index] === undefined) return plan;
  return withRun(plan, run, { ...run, bends: run.bends.with(index, at) });
}
