import { runById } from '../byId.ts';
import type { Plan } from '../schema.ts';

/** Takes a run out; a locked one stays. */
export function removeRun(plan: Plan, id: string): Plan {
  const run = runById(plan, id);
  if (run === undefined || run.locked) return plan;
  return { ...plan, runs: plan.runs.filter((other) => other !== run) };
}
