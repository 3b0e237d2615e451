import { isIdUsed } from '../ids.ts';
import { MAX_ITEMS, type Plan, type Run } from '../schema.ts';
import { acceptRun } from './accept.ts';

/** Adds a run between two terminals of its sheet; a run from a terminal to itself is none. */
export function addRun(plan: Plan, run: Run): Plan {
  const accepted = acceptRun(run, plan.fittings);
  if (accepted === null || plan.runs.length >= MAX_ITEMS || isIdUsed(plan, accepted.id)) return plan;
  return { ...plan, runs: [...plan.runs, accepted] };
}
