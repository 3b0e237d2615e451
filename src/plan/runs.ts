import { fittingById } from './byId.ts';
import type { Plan, Point, Run, TerminalRef } from './schema.ts';

/** The run as drawn: from its first fitting, by its bends, to its last. Ends that are gone are left out. */
export function runPoints(plan: Plan, run: Run): Point[] {
  const placeOf = ({ fittingId }: TerminalRef): Point[] => {
    const fitting = fittingById(plan, fittingId);
    return fitting === undefined ? [] : [fitting.at];
  };
  return [...placeOf(run.from), ...run.bends, ...placeOf(run.to)];
}
