/** A list of an answer told by what of it reads otherwise than in the one before. */
import { Members } from './members.ts';

export interface ListChange {
  /** For each member its place in the list before, or its id where it was not in it; null where all stand where they stood. */
  readonly order: readonly (number | string)[] | null;
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
  const stood = isSame(before.ids, now.ids) ? null : new Map(before.ids.map((id, place) => [id, place]));
  const order = stood && now.ids.map((id) => stood.get(id) ?? id);
  const places = now.texts.flatMap((text, place) => {
    const was = order === null ? place : order[place];
    return typeof was === 'number' && text === before.texts[was] ? [] : [place];
  });
  return { order, places, texts: places.map((place) => now.texts[place]).join('\n') };
}

/** The members as they were, in that order; of new ones only the ids are known. */
function reordered<T>({ ids, list }: Members<T>, order: readonly (number | string)[]): Members<T> {
  return new Members(
    order.map((one) => (typeof one === 'number' ? (ids[one] ?? '') : one)),
    order.map((one) => (typeof one === 'number' ? list[one] : undefined) ?? { text: '', read: null }),
  );
}

/** The list after a change: what is not told is the same object as before, and so is a list of which nothing is. */
export function changed<T>(before: Members<T>, { order, places, texts }: ListChange): Members<T> {
  const list = order === null ? before : reordered(before, order);
  if (places.length === 0) return list;
  const told = texts.split('\n');
  return list.with(places.map((place, index) => [place, { text: told[index] ?? '', read: null }]));
}
