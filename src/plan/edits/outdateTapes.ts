import { fittingById, runById, runsAt } from '../byId.ts';
import { drawnLengthOf, drawnM, drawnUncertaintyM } from '../drawnLength.ts';
import type { Fitting, Plan, Run } from '../schema.ts';

/** Whether a tape that told these runs' length tells it no longer: the drawing has left it, by more than it may be off. */
export function hasLeft(tapedM: number, beforeM: number, nowM: number): boolean {
  const apartM = Math.abs(nowM - tapedM);
  return apartM > Math.abs(beforeM - tapedM) && apartM > drawnUncertaintyM(nowM);
}

const drawn = (plan: Plan, run: Run): number => drawnM(drawnLengthOf(plan, run));

/** The fittings that stand elsewhere than before, or differ in something else. */
function changedFittings(before: Plan, after: Plan): ReadonlySet<string> {
  // mostly each stands in the list where it stood
  const isAsBefore = (fitting: Fitting, place: number): boolean =>
    before.fittings[place] === fitting || fittingById(before, fitting.id) === fitting;
  return new Set(after.fittings.flatMap((fitting, place) => (isAsBefore(fitting, place) ? [] : [fitting.id])));
}

/**
 * After something has been moved: runs that are drawn further from their tape than before, and further than a drawing may
 * be off, were measured when they lay elsewhere. One that is drawn nearer to its tape now only mends the drawing.
 * 0.3 m taped and drawn, then drawn 1.5 m: outdated. 0.15 m taped, drawn 0.6 m, then drawn 0.3 m: not.
 */
export function outdateTapes(before: Plan, after: Plan): Plan {
  if (after === before) return after;
  const moved = changedFittings(before, after);
  const isOutdated = (run: Run): boolean => {
    if (run.tapedM === null || run.tapedAs === 'outdated') return false;
    const isMoved = moved.has(run.from.fittingId) || moved.has(run.to.fittingId);
    const was = runById(before, run.id);
    if (was === undefined || run.tapedM !== was.tapedM || (was === run && !isMoved)) return false;
    return hasLeft(run.tapedM, drawn(before, was), drawn(after, run));
  };
  // a finger that drags asks with every move: where the runs are as they were, those at what was moved are all there are
  const asked = after.runs === before.runs ? [...moved].flatMap((id) => runsAt(after, id)) : after.runs;
  const ids = new Set(asked.filter(isOutdated).map(({ id }) => id));
  if (ids.size === 0) return after;
  return { ...after, runs: after.runs.map((run) => (ids.has(run.id) ? { ...run, tapedAs: 'outdated' } : run)) };
}
