/**
 * What a plan holds, by id. Documents never change in place, so a list is gone through once; and a list that was made of
 * another by renewing members keeps that one's index: a finger that drags makes a new list with every frame.
 */
import { differing } from './differing.ts';
import type { Fitting, Plan, Run } from './schema.ts';

/** An index of lists, worked out once for each, or taken over from the one before where `isAlike` holds of all members. */
export function indexed<T extends object, Index>(
  make: (list: readonly T[]) => Index,
  isAlike: (one: T, was: T) => boolean,
) {
  type Known = { readonly list: readonly T[]; readonly count: number; readonly index: Index };
  const known = new WeakMap<readonly T[], Known>();
  let last: Known | null = null;
  const isAsLast = (list: readonly T[], before: Known): boolean =>
    list.length === before.count &&
    (differing(list, before.list)?.every((place) => isAlike(list[place] as T, before.list[place] as T)) ?? false);
  return (list: readonly T[]): Index => {
    const before = known.get(list);
    // a list still being built has grown since
    if (before?.count === list.length) return before.index;
    const index = last !== null && isAsLast(list, last) ? last.index : make(list);
    last = { list, count: list.length, index };
    known.set(list, last);
    return index;
  };
}

type Places = ReadonlyMap<string, number>;

const placesById = <T extends { readonly id: string }>() =>
  indexed<T, Places>(
    (list) => new Map(list.map(({ id }, place) => [id, place])),
    (one, was) => one.id === was.id,
  );

const fittingPlaces = placesById<Fitting>();
const runPlaces = placesById<Run>();

/** The fitting with that id, or undefined when the plan does not hold it. */
export const fittingById = ({ fittings }: Plan, id: string): Fitting | undefined =>
  fittings[fittingPlaces(fittings).get(id) ?? -1];

export const runById = ({ runs }: Plan, id: string): Run | undefined => runs[runPlaces(runs).get(id) ?? -1];

function placesByEnd(runs: readonly Run[]): ReadonlyMap<string, readonly number[]> {
  const at = new Map<string, number[]>();
  for (const [place, { from, to }] of runs.entries()) {
    for (const id of new Set([from.fittingId, to.fittingId])) {
      const here = at.get(id);
      if (here === undefined) at.set(id, [place]);
      else here.push(place);
    }
  }
  return at;
}

const endPlaces = indexed(
  placesByEnd,
  (one, was) => one.from.fittingId === was.from.fittingId && one.to.fittingId === was.to.fittingId,
);

/** The runs that end at a fitting, in the order of the plan. */
export const runsAt = ({ runs }: Plan, fittingId: string): readonly Run[] =>
  (endPlaces(runs).get(fittingId) ?? []).flatMap((place) => runs[place] ?? []);
