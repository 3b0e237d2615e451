import { runById } from '../byId.ts';
import type { Plan } from '../schema.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

/** Takes a bend out; a locked run stays as it is. */
export function removeBend(plan: Plan, runId: string, index: number): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked || run.bends[index] === undefined) return plan;
  return outdateTapes(plan, withRun(plan, run, { ...run, bends: run.bends.toSpliced(index, 1) }));
}
