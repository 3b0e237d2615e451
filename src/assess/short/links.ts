/** The devices as a short finds them. */
import { pickFamily } from '../../calc/fuse/family.ts';
import { type LinkFamily, linkFamily } from '../../calc/tables/links.ts';
import type { Facts } from '../facts.ts';
import { heldFamilies, ownFamilies } from '../families.ts';
import { per } from '../perModel.ts';

/** A device with a rating. */
export interface RatedLink {
  readonly link: number;
  readonly ratingA: number;
  /** null: the rating is made in none of the families it may be taken from. */
  readonly family: LinkFamily | null;
}

/** By link; null for one that is not rated. */
export const ratedLinks = per((facts: Facts): readonly (RatedLink | null)[] => {
  const { model, ratings } = facts;
  const own = ownFamilies(model);
  const picked = new Map<readonly string[], Map<number, LinkFamily | null>>();
  const familyFor = (ratingA: number, held: ReturnType<typeof heldFamilies>): LinkFamily | null => {
    const byRating = picked.get(held) ?? new Map<number, LinkFamily | null>();
    picked.set(held, byRating);
    const before = byRating.get(ratingA);
    if (before !== undefined) return before;
    const id = pickFamily(ratingA, held, model.settings.systemV, own);
    const family = id === null ? null : linkFamily(id, own);
    byRating.set(ratingA, family);
    return family;
  };
  return model.circuit.links.map((device, link) => {
    const ratingA = ratings[link] ?? null;
    if (ratingA === null) return null;
    return { link, ratingA, family: familyFor(ratingA, heldFamilies(model, device)) };
  });
});

/** For the time-current bands: a family, or a name that no band is held for. */
export const familyNameOf = ({ family }: RatedLink): string => family?.id ?? 'notMade';
