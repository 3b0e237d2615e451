/** Joining an end of a run somewhere else: what it may be joined to, and the act. */
import { runById } from '../plan/byId.ts';
import { reconnectRun } from '../plan/edits/reconnectRun.ts';
import type { Plan, TerminalRef } from '../plan/schema.ts';
import { type ConnectRefusal, connectRefusal } from './connect.ts';

export type RunEnd = 'from' | 'to';

/** The plan without a run: what its ends are measured against, which it is not to be in the way of itself. */
export const withoutRun = (plan: Plan, runId: string): Plan => ({
  ...plan,
  runs: plan.runs.filter(({ id }) => id !== runId),
});

/** Why an end of a run cannot be joined to a terminal, or null when it can. */
export function reconnectRefusal(plan: Plan, runId: string, end: RunEnd, ref: TerminalRef): ConnectRefusal | null {
  const run = runById(plan, runId);
  if (run === undefined) return 'gone';
  const others = withoutRun(plan, runId);
  const reason = end === 'from' ? connectRefusal(others, ref, run.to) : connectRefusal(others, run.from, ref);
  if (reason !== null) return reason;
  const isThere = run[end].fittingId === ref.fittingId && run[end].terminal === ref.terminal;
  return isThere || reconnectRun(plan, runId, end, ref) !== plan ? null : 'refused';
}
