import { runsAt } from '../runs.ts';
import type { Fitting, Plan, Run } from '../schema.ts';
import { fittingById, INLINE_KINDS } from '../terminals.ts';
import { joinRuns } from './joinRuns.ts';

/**
 * Takes a fitting out. The two runs at a fuse, a pass-through or another inline fitting become one again; any other run
 * that ends at the fitting goes with it. A locked fitting stays, and so does one that would take a locked run with it.
 */
export function removeFitting(plan: Plan, id: string): Plan {
  const fitting = fittingById(plan, id);
  if (fitting === undefined || fitting.locked) return plan;
  const runs = runsAt(plan, id);
  const joined = joinedRun(plan, fitting, runs);
  if (joined === null && runs.some(({ locked }) => locked)) return plan;
  const [first] = runs;
  return {
    ...plan,
    fittings: plan.fittings.filter((other) => other !== fitting),
    runs: plan.runs.flatMap((run) => {
      if (!runs.includes(run)) return [run];
      return run === first && joined !== null ? [joined] : [];
    }),
  };
}

function joinedRun(plan: Plan, fitting: Fitting, [first, second, ...others]: readonly Run[]): Run | null {
  if (!INLINE_KINDS.has(fitting.kind) || first === undefined || second === undefined || others.length > 0) return null;
  return joinRuns(plan, fitting, first, second);
}
