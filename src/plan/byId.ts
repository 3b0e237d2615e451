/** What a plan holds, by id: documents never change in place, so a list is gone through once. */
import type { Fitting, Plan, Run } from './schema.ts';

interface Identified {
  readonly id: string;
}

const places = new WeakMap<readonly Identified[], ReadonlyMap<string, number>>();

function placesIn(list: readonly Identified[]): ReadonlyMap<string, number> {
  const before = places.get(list);
  if (before !== undefined) return before;
  const made = new Map(list.map(({ id }, place) => [id, place]));
  places.set(list, made);
  return made;
}

function find<T extends Identified>(list: readonly T[], id: string): T | undefined {
  const found = list[placesIn(list).get(id) ?? -1];
  // a list still being built has grown since
  return found?.id === id ? found : list.find((one) => one.id === id);
}

/** The fitting with that id, or undefined when the plan does not hold it. */
export const fittingById = (plan: Plan, id: string): Fitting | undefined => find(plan.fittings, id);

export const runById = (plan: Plan, id: string): Run | undefined => find(plan.runs, id);

const ends = new WeakMap<
  readonly Run[],
  { readonly count: number; readonly at: ReadonlyMap<string, readonly Run[]> }
>();
const NONE: readonly Run[] = [];

function runsByFitting(runs: readonly Run[]): ReadonlyMap<string, readonly Run[]> {
  const before = ends.get(runs);
  if (before?.count === runs.length) return before.at;
  const at = new Map<string, Run[]>();
  for (const run of runs) {
    for (const id of new Set([run.from.fittingId, run.to.fittingId])) {
      const here = at.get(id);
      if (here === undefined) at.set(id, [run]);
      else here.push(run);
    }
  }
  ends.set(runs, { count: runs.length, at });
  return at;
}

/** The runs that end at a fitting, in the order of the plan. */
export const runsAt = (plan: Plan, fittingId: string): readonly Run[] =>
  runsByFitting(plan.runs).get(fittingId) ?? NONE;
