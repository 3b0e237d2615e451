import { largestRatingWhy, neededRatingWhy, smallestRatingWhy } from '../../calc/fuse/rating.ts';
import { largestAtMost, smallestAtLeast, type Why, whyBuilder } from '../../calc/why.ts';
import type { CircuitLink } from '../circuit.ts';
import { type Facts, fullOfLink } from '../facts.ts';
import { conductorCeilingA, heldRatings, makerCeilingA } from '../ratings.ts';
import { heatingShare } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import { aboutSetting } from './about.ts';

/** Why of a link's rating; the result is 'In'. Null where it has none. */
export function ratingWhy(
  facts: Facts,
  link: number,
  { link: wanted, zone }: CircuitLink,
  ratingA: number | null,
): Why | null {
  const { model } = facts;
  const { settings } = model;
  if (ratingA === null) return null;
  const fullA = fullOfLink(facts, link);
  const of = {
    fullA: fullA ?? 0,
    heatingA: (fullA ?? 0) * heatingShare(model),
    holderC: ambientC(settings, zone),
  };
  const about = { holderC: aboutSetting(settings, `${zone}C`) };
  const held = heldRatings(model, link);
  const needA = facts.operating?.needs[link] ?? 0;
  const ceilingA = Math.min(conductorCeilingA(model, link), makerCeilingA(model, link));
  if (wanted.ratingA === 'auto' && smallestAtLeast(held, needA) === ratingA) return smallestRatingWhy(of, held, about);
  if (wanted.ratingA === 'auto' && largestAtMost(held, ceilingA) === ratingA) return largestRatingWhy(held, ceilingA);
  // fixed by hand, or one step above what a current needs that a smaller link's own drop would raise beyond it
  const builder = whyBuilder();
  if (fullA !== null) builder.include(neededRatingWhy(of, about));
  builder.input('In', 'A', ratingA, { origin: wanted.ratingA === 'auto' ? 'choice' : 'told' });
  return builder.done('In');
}
