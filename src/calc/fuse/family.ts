import { LINK_FAMILIES, type LinkFamily, type LinkFamilyId } from '../tables/links.ts';

/** Every rating the families offer, A, ascending, each once; `own`: families that the user tells. */
export function standardRatings(
  familyIds: readonly LinkFamilyId[],
  own: readonly LinkFamily[] = [],
): readonly number[] {
  const held = [...LINK_FAMILIES, ...own].filter(({ id }) => familyIds.includes(id));
  const ratings = new Set(held.flatMap(({ ratingsA }) => ratingsA));
  return [...ratings].sort((one, other) => one - other);
}

/** A link with no stated breaking capacity comes after every one that states it. */
const proven = (family: LinkFamily): number => family.breakingA ?? 0;

/**
 * The family to take a rating from, or null when none offers it for that voltage: the greatest breaking capacity,
 * then the smallest body. Source: our rules. 40 A out of types C, E and SF30 gives SF30 (2000 A against 1000 A).
 */
export function pickFamily(
  ratingA: number,
  familyIds: readonly LinkFamilyId[],
  systemV = 12,
  own: readonly LinkFamily[] = [],
): LinkFamilyId | null {
  const offering = [...LINK_FAMILIES, ...own].filter(
    ({ id, ratingsA, ratedV }) => familyIds.includes(id) && ratingsA.includes(ratingA) && ratedV >= systemV,
  );
  const best = Math.max(...offering.map(proven));
  return offering.find((family) => proven(family) === best)?.id ?? null;
}
