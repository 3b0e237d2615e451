import { runById } from '../byId.ts';
import type { Plan, Point } from '../schema.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

/** Puts a bend before the bend of that index (or last of all); a locked run stays as it is. */
export function addBend(plan: Plan, runId: string, index: number, at: Point): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked || !Number.isInteger(index) || index < 0 || index > run.bends.length) return plan;
  return outdateTapes(plan, withRun(plan, run, { ...run, bends: run.bends.toSpliced(index, 0, at) }));
}
