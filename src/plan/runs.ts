import type { Plan, Point, Run, TerminalRef } from './schema.ts';
import { fittingById } from './terminals.ts';

/** The run as drawn: from its first fitting, by its bends, to its last. Ends that are gone are left out. */
export function runPoints(plan: Plan, run: Run): Point[] {
  const placeOf = ({ fittingId }: TerminalRef): Point[] => {
    const fitting = fittingById(plan, fittingId);
    return fitting === undefined ? [] : [fitting.at];
  };
  return [...placeOf(run.from), ...run.bends, ...placeOf(run.to)];
}

/** The runs that end at a fitting, in the order of the plan. */
export const runsAt = (plan: Plan, fittingId: string): Run[] =>
  plan.runs.filter(({ from, to }) => from.fittingId === fittingId || to.fittingId === fittingId);
