import { runById } from '../byId.ts';
import type { Plan, Run } from '../schema.ts';
import { withRun } from './accept.ts';

/** What may be changed of a run; its ends are reconnected. */
export type RunPatch = Partial<Omit<Run, 'id' | 'sheetId' | 'from' | 'to'>>;

/** Changes what a run is; its bends only while it is not locked. */
export function changeRun(plan: Plan, id: string, patch: RunPatch): Plan {
  const run = runById(plan, id);
  if (run === undefined || (run.locked && patch.bends !== undefined)) return plan;
  const { sheetId, from, to } = run;
  return withRun(plan, run, { ...run, ...patch, id, sheetId, from, to });
}
