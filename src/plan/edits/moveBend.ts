import { runById } from '../byId.ts';
import type { Plan, Point } from '../schema.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

/** Moves a bend; a locked run stays as it is, a taped length stays, and is outdated when the drawing leaves it. */
export function moveBend(plan: Plan, runId: string, index: number, at: Point): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked || run.bends[index] === undefined) return plan;
  return outdateTapes(plan, withRun(plan, run, { ...run, bends: run.bends.with(index, at) }));
}
