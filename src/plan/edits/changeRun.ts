import { runById } from '../byId.ts';
import type { Plan, Run } from '../schema.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

/** What may be changed of a run; its ends are reconnected. */
export type RunPatch = Partial<Omit<Run, 'id' | 'sheetId' | 'from' | 'to'>>;

/** Changes what a run is; its bends only while it is not locked. A length that is taped anew is the run's as it lies. */
export function changeRun(plan: Plan, id: string, patch: RunPatch): Plan {
  const run = runById(plan, id);
  if (run === undefined || (run.locked && patch.bends !== undefined)) return plan;
  const { sheetId, from, to } = run;
  const taped: RunPatch = patch.tapedM === undefined ? {} : { tapedAs: 'run' };
  return outdateTapes(plan, withRun(plan, run, { ...run, ...taped, ...patch, id, sheetId, from, to }));
}
