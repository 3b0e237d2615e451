import { runById } from '../byId.ts';
import type { Plan, TerminalRef } from '../schema.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

/**
 * Joins one end of a run to another terminal of its sheet; a locked run stays where it is. The joint there is made anew:
 * what was measured of it is gone.
 */
export function reconnectRun(plan: Plan, runId: string, end: 'from' | 'to', ref: TerminalRef): Plan {
  const run = runById(plan, runId);
  if (run === undefined || run.locked) return plan;
  const isThere = run[end].fittingId === ref.fittingId && run[end].terminal === ref.terminal;
  return isThere ? plan : outdateTapes(plan, withRun(plan, run, { ...run, [end]: ref, [`${end}JointOhm`]: null }));
}
