/**
 * A list of an answer by the ids of its members. While a finger drags such lists come as text, of which little is looked
 * at: a member is read when it is first asked for.
 */

/** One member; as text only until it is read, by whichever list first. */
export interface Told<T> {
  readonly text: string;
  read: T | null;
}

export class Members<T> {
  #all: readonly T[] | null;
  #places: ReadonlyMap<string, number> | null = null;

  constructor(
    /** In the order of the list. */
    readonly ids: readonly string[],
    readonly list: readonly Told<T>[],
    all: readonly T[] | null = null,
  ) {
    this.#all = all;
  }

  get(id: string): T | undefined {
    this.#places ??= new Map(this.ids.map((one, place) => [one, place]));
    const told = this.list[this.#places.get(id) ?? -1];
    return told && readOf(told);
  }

  /** All of them in order; the same list each time. */
  all(): readonly T[] {
    this.#all ??= this.list.map(readOf);
    return this.#all;
  }

  /** With other members at those places. */
  with(told: Iterable<readonly [place: number, one: Told<T>]>): Members<T> {
    const list = [...this.list];
    for (const [place, one] of told) list[place] = one;
    const next = new Members(this.ids, list);
    // the ids stay where they are
    next.#places = this.#places;
    return next;
  }
}

function readOf<T>(told: Told<T>): T {
  told.read ??= JSON.parse(told.text) as T;
  return told.read;
}

export const membersOf = <T>(list: readonly T[], idOf: (one: T) => string): Members<T> =>
  new Members(
    list.map(idOf),
    list.map((read) => ({ text: '', read })),
    list,
  );
