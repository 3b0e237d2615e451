import { differing } from './differing.ts';
import type { Plan } from './schema.ts';

const isAlikeList = (before: readonly object[], after: readonly object[]): boolean =>
  differing(before, after)?.every((place) => JSON.stringify(before[place]) === JSON.stringify(after[place])) ?? false;

/** Whether two plans say the same, though one was made anew: of what is the same object nothing is read. */
export function isAlike(before: Plan, after: Plan): boolean {
  const names = Object.keys(after) as (keyof Plan)[];
  return names.every((name) =>
    name === 'fittings' || name === 'runs' ? isAlikeList(before[name], after[name]) : before[name] === after[name],
  );
}
