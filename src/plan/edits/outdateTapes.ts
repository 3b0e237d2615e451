import { runById, runsAt } from '../byId.ts';
import { differing } from '../differing.ts';
import { drawnLengthOf, drawnM, drawnUncertaintyM } from '../drawnLength.ts';
import { renewed } from '../renewed.ts';
import type { Plan, Run } from '../schema.ts';

/** Whether a tape that told these runs' length tells it no longer: the drawing has left it, by more than it may be off. */
export function hasLeft(tapedM: number, beforeM: number, nowM: number): boolean {
  const apartM = Math.abs(nowM - tapedM);
  return apartM > Math.abs(beforeM - tapedM) && apartM > drawnUncertaintyM(nowM);
}

const drawn = (plan: Plan, run: Run): number => drawnM(drawnLengthOf(plan, run));

/** Members of a list that are not, as they are, in the one before. */
function changedIn<T extends { readonly id: string }>(before: readonly T[], after: readonly T[]): readonly T[] {
  const places = differing(before, after);
  if (places !== null) return places.flatMap((place) => after[place] ?? []);
  const were = new Set(before);
  return after.filter((one) => !were.has(one));
}

/**
 * After something has been moved: runs that are drawn further from their tape than before, and further than a drawing may
 * be off, were measured when they lay elsewhere. One that is drawn nearer to its tape now only mends the drawing.
 * 0.3 m taped and drawn, then drawn 1.5 m: outdated. 0.15 m taped, drawn 0.6 m, then drawn 0.3 m: not.
 */
export function outdateTapes(before: Plan, after: Plan): Plan {
  if (after === before) return after;
  const moved = new Set(changedIn(before.fittings, after.fittings).map(({ id }) => id));
  const isOutdated = (run: Run): boolean => {
    if (run.tapedM === null || run.tapedAs === 'outdated') return false;
    const isMoved = moved.has(run.from.fittingId) || moved.has(run.to.fittingId);
    const was = runById(before, run.id);
    if (was === undefined || run.tapedM !== was.tapedM || (was === run && !isMoved)) return false;
    return hasLeft(run.tapedM, drawn(before, was), drawn(after, run));
  };
  // a finger that drags asks with every move: the runs that were changed and those at what was moved are all there are
  const asked = new Set([...changedIn(before.runs, after.runs), ...[...moved].flatMap((id) => runsAt(after, id))]);
  const runs = [...asked]
    .filter(isOutdated)
    .reduce((list, run) => renewed(list, run, { ...run, tapedAs: 'outdated' }), after.runs);
  return runs === after.runs ? after : { ...after, runs };
}
