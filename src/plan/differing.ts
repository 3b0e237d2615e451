/**
 * Where two lists of a plan differ. A plan never changes in place, so a finger that moves one of a thousand fittings makes
 * a new list with every frame; one that knows what it was made of (`renewed.ts`) need not be gone through.
 */

export interface Origin {
  readonly of: readonly object[];
  /** Where a list differs from that one; elsewhere they hold the very same members. */
  readonly places: readonly number[];
}

export const origins = new WeakMap<readonly object[], Origin>();

export const originOf = (list: readonly object[]): Origin => origins.get(list) ?? { of: list, places: [] };

/** The places at which two lists of one length hold other members; null where their lengths differ. */
export function differing(one: readonly object[], other: readonly object[]): readonly number[] | null {
  if (one.length !== other.length) return null;
  const [first, second] = [originOf(one), originOf(other)];
  const places = first.of === second.of ? new Set([...first.places, ...second.places]) : one.keys();
  return [...places].filter((place) => one[place] !== other[place]);
}
