import { fittingById, runById } from '../byId.ts';
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
  const isOutdated = (run: Run, place: number): boolean => {
    if (run.tapedM === null || run.tapedAs === 'outdated') return false;
    // most runs lie as they lay, and are not measured: a finger that drags asks with every move
    const isMoved = moved.has(run.from.fittingId) || moved.has(run.to.fittingId);
    const was = before.runs[place] === run ? run : runById(before, run.id);
    if (was === undefined || run.tapedM !== was.tapedM || (was === run && !isMoved)) return false;
    return hasLeft(run.tapedM, drawn(before, was), drawn(after, run));
  };
  const ids = new Set(after.runs.filter(isOutdated).map(({ id }) => id));
  if (ids.size === 0) return after;
  return { ...after, runs: after.runs.map((run) => (ids.has(run.id) ? { ...run, tapedAs: 'outdated' } : run)) };
}
