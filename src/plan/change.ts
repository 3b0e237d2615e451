/**
 * What a plan has that another has not: plans are never changed in place, so whatever is the same object in both is not
 * told again. Small enough to send from one thread to another with every move of a finger.
 */
import { differing } from './differing.ts';
import type { Plan } from './schema.ts';

/**
 * A list told by another: where each member keeps its place, the few that are new; else for each member its place there,
 * or the member itself where it is new.
 */
type ListChange<T> =
  | { readonly renewed: readonly (readonly [place: number, member: T])[] }
  | { readonly members: readonly (number | T)[] };

/** What differs from the plan before, by part; a part that is missing is as it was. */
export type PlanChange = Partial<Omit<Plan, 'fittings' | 'runs'>> & {
  readonly fittings?: ListChange<Plan['fittings'][number]>;
  readonly runs?: ListChange<Plan['runs'][number]>;
};

function listChange<T extends { id: string }>(before: readonly T[], after: readonly T[]): ListChange<T> {
  const renewed = differing(before, after)?.flatMap((place) => {
    const one = after[place];
    return one === undefined ? [] : [[place, one] as const];
  });
  if (renewed?.every(([place, one]) => one.id === before[place]?.id)) return { renewed };
  const places = new Map(before.map((one, place) => [one, place]));
  return { members: after.map((one) => places.get(one) ?? one) };
}

function changedList<T extends object>(before: readonly T[], change: ListChange<T>): T[] {
  if ('renewed' in change) {
    const after = [...before];
    for (const [place, member] of change.renewed) after[place] = member;
    return after;
  }
  return change.members.flatMap((one) => {
    const member = typeof one === 'number' ? before[one] : one;
    return member === undefined ? [] : [member];
  });
}

/** What leads from one plan to another. One moved fuse of 200: its own fitting, and where it stands. */
export function changeFrom(before: Plan, after: Plan): PlanChange {
  const { fittings, runs, ...rest } = after;
  const parts = Object.entries(rest).filter(([name, part]) => part !== before[name as keyof Plan]);
  return {
    ...Object.fromEntries(parts),
    ...(fittings === before.fittings ? {} : { fittings: listChange(before.fittings, fittings) }),
    ...(runs === before.runs ? {} : { runs: listChange(before.runs, runs) }),
  };
}

/** The plan after a change: equal to the one that the change was made from. */
export function withChange(before: Plan, { fittings, runs, ...rest }: PlanChange): Plan {
  return {
    ...before,
    ...rest,
    ...(fittings === undefined ? {} : { fittings: changedList(before.fittings, fittings) }),
    ...(runs === undefined ? {} : { runs: changedList(before.runs, runs) }),
  };
}
