import { fittingById, runsAt } from '../byId.ts';
import type { Conductor, Fitting, Plan, Run } from '../schema.ts';
import { INLINE_KINDS } from '../terminals.ts';
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

/** The one conductor all the way when a fitting between unlike ones goes; null where none are joined, or they are alike. */
export function conductorJoined(plan: Plan, id: string): Conductor | null {
  const fitting = fittingById(plan, id);
  const runs = runsAt(plan, id);
  const joined = fitting === undefined ? null : joinedRun(plan, fitting, runs);
  if (joined === null) return null;
  return runs.every((run) => areAlike(run.conductor, joined.conductor)) ? null : joined.conductor;
}

const areAlike = (one: Conductor, other: Conductor): boolean =>
  one.size === other.size &&
  one.material.value === other.material.value &&
  one.insulationC.value === other.insulationC.value;

function joinedRun(plan: Plan, fitting: Fitting, [first, second, ...others]: readonly Run[]): Run | null {
  if (!INLINE_KINDS.has(fitting.kind) || first === undefined || second === undefined || others.length > 0) return null;
  return joinRuns(plan, fitting, first, second);
}
