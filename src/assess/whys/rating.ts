import { largestRatingWhy, neededRatingWhy, smallestRatingWhy } from '../../calc/fuse/rating.ts';
import { largestAtMost, smallestAtLeast, type Why, whyBuilder } from '../../calc/why.ts';
import type { CircuitLink } from '../circuit.ts';
import { type Facts, fullOfLink } from '../facts.ts';
import { heldRatings, linkEdge, mostAllowedA } from '../ratings.ts';
import { heatingShareAt } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import { aboutSetting } from './about.ts';

/** What a link has to carry by the operating point, in the air round its holder. */
const caseOf = ({ model }: Facts, link: number, { zone }: Pick<CircuitLink, 'zone'>, fullA: number) => ({
  fullA,
  heatingA: fullA * heatingShareAt(model, linkEdge(model, link)),
  holderC: ambientC(model.settings, zone),
});

/** Why of the least rating of a link that none held does for, beside what is held; the result is 'Ineed'. */
export function needWhy(facts: Facts, link: number, { zone }: CircuitLink): Why {
  const { model, operating } = facts;
  const builder = whyBuilder();
  const held = heldRatings(model, link);
  if (held.length > 0) builder.list('ratings', 'A', held);
  const ceilingA = mostAllowedA(model, link);
  if (ceilingA !== Infinity) builder.input('Iz', 'A', ceilingA);
  const fullA = operating?.fullA[linkEdge(model, link)] ?? 0;
  const about = { holderC: aboutSetting(model.settings, `${zone}C`) };
  return builder.done(builder.include(neededRatingWhy(caseOf(facts, link, { zone }, fullA), about)));
}

/** Why of a link's rating; the result is 'In'. */
export function ratingWhy(facts: Facts, link: number, { link: wanted, zone }: CircuitLink, ratingA: number): Why {
  const { model } = facts;
  const { settings } = model;
  const fullA = fullOfLink(facts, link);
  const of = caseOf(facts, link, { zone }, fullA ?? 0);
  const about = { holderC: aboutSetting(settings, `${zone}C`) };
  const held = heldRatings(model, link);
  const needA = facts.operating?.needs[link] ?? 0;
  const ceilingA = mostAllowedA(model, link);
  const isAuto = wanted.ratingA === 'auto';
  const bySmallest = isAuto && smallestAtLeast(held, needA) === ratingA ? smallestRatingWhy(of, held, about) : null;
  const byLargest = isAuto && largestAtMost(held, ceilingA) === ratingA ? largestRatingWhy(held, ceilingA) : null;
  if (bySmallest !== null) return bySmallest;
  if (byLargest !== null) return byLargest;
  // fixed by hand, or one step above what a current needs that a smaller link's own drop would raise beyond it
  const builder = whyBuilder();
  if (fullA !== null) builder.include(neededRatingWhy(of, about));
  builder.input('In', 'A', ratingA, { origin: isAuto ? 'choice' : 'told' });
  return builder.done('In');
}
