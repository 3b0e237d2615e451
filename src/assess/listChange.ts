/** A list of an answer told by what of it reads otherwise than in the one before. */
import { Members, placesOf } from './members.ts';

export interface ListChange {
  /** Of all its members, in order; null where they are those before. */
  readonly ids: readonly string[] | null;
  /** Where the members stand that are told, and those as lines of JSON. */
  readonly places: readonly number[];
  readonly texts: string;
}

/** What is kept of a list to tell the next one by. */
export interface ListText {
  readonly ids: readonly string[];
  readonly texts: readonly string[];
}

export const textOf = <T>(list: readonly T[], idOf: (one: T) => string): ListText => ({
  ids: list.map(idOf),
  texts: list.map((one) => JSON.stringify(one)),
});

const isSame = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((id, place) => id === other[place]);

export function changeOf(before: ListText, now: ListText): ListChange {
  const places = now.texts.flatMap((text, place) => (text === before.texts[place] ? [] : [place]));
  return {
    ids: isSame(before.ids, now.ids) ? null : now.ids,
    places,
    texts: places.map((place) => now.texts[place]).join('\n'),
  };
}

/** The list after a change: what is not told is the same object as before, and so is a list of which nothing is. */
export function changed<T>(before: Members<T>, { ids, places, texts }: ListChange): Members<T> {
  if (ids === null && places.length === 0) return before;
  const list = before.list.slice(0, ids?.length);
  const told = texts.split('\n');
  for (const [index, place] of places.entries()) list[place] = { text: told[index] ?? '', read: null };
  return new Members(ids === null ? before.places : placesOf(ids), list);
}
