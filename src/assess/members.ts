/**
 * A list of an answer by the ids of its members. While a finger drags such lists come as text, of which little is looked
 * at: a member is read when it is first asked for.
 */

/** One member; as text only until it is read, by whichever list first. */
interface Told<T> {
  readonly text: string;
  read: T | null;
}

export class Members<T> {
  #all: readonly T[] | null;

  constructor(
    /** Where in the list each member stands. */
    readonly places: ReadonlyMap<string, number>,
    readonly list: readonly Told<T>[],
    all: readonly T[] | null = null,
  ) {
    this.#all = all;
  }

  get(id: string): T | undefined {
    const told = this.list[this.places.get(id) ?? -1];
    return told && readOf(told);
  }

  /** All of them in order; the same list each time. */
  all(): readonly T[] {
    this.#all ??= this.list.map(readOf);
    return this.#all;
  }
}

function readOf<T>(told: Told<T>): T {
  told.read ??= JSON.parse(told.text) as T;
  return told.read;
}

export const placesOf = (ids: readonly string[]): ReadonlyMap<string, number> =>
  new Map(ids.map((id, place) => [id, place]));

export const membersOf = <T>(list: readonly T[], idOf: (one: T) => string): Members<T> =>
  new Members(
    placesOf(list.map(idOf)),
    list.map((read) => ({ text: '', read })),
    list,
  );
