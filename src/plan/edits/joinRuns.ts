import { roundM } from '../round.ts';
import type { Fitting, Plan, Run } from '../schema.ts';
import { acceptRun } from './accept.ts';
import { bendsOf, cableThrough } from './cable.ts';

/**
 * The one run that the two runs at a fitting make when the fitting goes; null when they cannot be one: of unlike kinds,
 * both ends of one at the fitting, or ending at the same terminal. Id, name, direction and properties are the first
 * run's. Lengths are never lost: rises add, taped lengths add when both are taped, and the greater slack holds. Either
 * lock holds; a sheath holds only when both have it.
 */
export function joinRuns(plan: Plan, fitting: Fitting, first: Run, second: Run): Run | null {
  const cable = cableThrough(plan, fitting, first, second);
  if (cable === null || first.kind !== second.kind) return null;
  const bends = bendsOf(cable.points);
  const way =
    first.to.fittingId === fitting.id
      ? { from: cable.from, to: cable.to, bends }
      : { from: cable.to, to: cable.from, bends: bends.toReversed() };
  return acceptRun(
    {
      ...first,
      ...way,
      riseM: roundM(first.riseM + second.riseM),
      tapedM: first.tapedM === null || second.tapedM === null ? null : roundM(first.tapedM + second.tapedM),
      slackPercent: Math.max(first.slackPercent, second.slackPercent),
      sheathed: first.sheathed && second.sheathed,
      locked: first.locked || second.locked,
    },
    plan.fittings,
  );
}
