import { originOf, origins } from './differing.ts';

/** The list with `now` in place of `before`, which knows that it differs there; an equal list where that is no member. */
export function renewed<T extends object>(list: readonly T[], before: T, now: T): T[] {
  const place = list.indexOf(before);
  const next = [...list];
  if (place === -1) return next;
  next[place] = now;
  const { of, places } = originOf(list);
  origins.set(next, { of, places: [...new Set([...places, place])] });
  return next;
}
