import {
  type Abouts,
  cited,
  largestAtMost,
  NO_WHY,
  type Recorder,
  smallestAtLeast,
  type Why,
  whyBuilder,
} from '../why.ts';
import { recordHolderFactor } from './holder.ts';

export { pickFamily, standardRatings } from './family.ts';
export { holderFactor, holderFactorWhy, holderTemperatureCovered } from './holder.ts';

/** Largest share of a rating a continuous load may take. */
const CONTINUOUS_SHARE = 0.8;
/** Voltage across a link at its rating: one published 40 A link, taken for all. */
const LINK_DROP_V = 0.075;

export interface RatingCase {
  /** All amplifiers behind the fuse at full sine, A. */
  readonly fullA: number;
  /** Their heating current, full x sqrt(duty), A. */
  readonly heatingA: number;
  /** Temperature round the holder, degC. */
  readonly holderC: number;
  /** Sum of the amplifiers' own fuses, where the plan goes by that, A. */
  readonly sumOnboardA?: number;
}

type Given = Abouts<'fullA' | 'heatingA' | 'holderC' | 'sumOnboardA'>;

function recordNeed(of: RatingCase, rec: Recorder, about: Given): number {
  const full = rec.input('Ifull', 'A', of.fullA, about.fullA);
  const heating = rec.input('Iheat', 'A', of.heatingA, about.heatingA);
  const share = rec.input('kContinuous', '1', CONTINUOUS_SHARE, cited('continuousLoad'));
  const factor = recordHolderFactor(of.holderC, rec, about);
  const byHeat = rec.step('Iwarm', 'A', 'Iheat / min(kContinuous, f)', heating / Math.min(share, factor));
  if (of.sumOnboardA === undefined)
    return rec.step('Ineed', 'A', 'max(Ifull, Iwarm)', Math.max(full, byHeat), { source: 'feedrunRules' });
  const onboard = rec.input('Ionboard', 'A', of.sumOnboardA, about.sumOnboardA);
  return rec.step('Ineed', 'A', 'max(Ifull, Iwarm, Ionboard)', Math.max(full, byHeat, onboard), {
    source: 'feedrunRules',
  });
}

/**
 * Least rating a fuse may have, A: the full current, the heating current / min(0.8, holder factor) and, where told,
 * the sum of the on-board fuses; the greatest of them. Source: our rules; 80 % as publicly taught; holder factor of one link.
 * 102 A full, 58.9 A heating, holder at 80 degC: max(102, 58.9 / 0.775 = 76) = 102 A.
 */
export function neededRating(of: RatingCase): number {
  return recordNeed(of, NO_WHY, {});
}

/** Why of `neededRating`; the result is 'Ineed'. */
export function neededRatingWhy(of: RatingCase, about: Given = {}): Why {
  const builder = whyBuilder();
  recordNeed(of, builder, about);
  return builder.done('Ineed');
}

/** Smallest rating from `needA` up to `ceilingA`, or null. ([100, 125, 150], 102, 136) gives 125. */
export function smallestRating(ratings: readonly number[], needA: number, ceilingA: number): number | null {
  const rating = smallestAtLeast(ratings, needA);
  return rating !== null && rating <= ceilingA ? rating : null;
}

/** Why of the rating a need leads to; the result is 'In'. Null when no rating is large enough. */
export function smallestRatingWhy(of: RatingCase, ratings: readonly number[], about: Given = {}): Why | null {
  const builder = whyBuilder();
  const need = recordNeed(of, builder, about);
  const rating = smallestAtLeast(builder.list('ratings', 'A', ratings), need);
  if (rating === null) return null;
  builder.step('In', 'A', 'smallestAtLeast(ratings, Ineed)', rating);
  return builder.done('In');
}

/** Largest rating not above `ceilingA`, or null: the fuse a conductor fixed by hand allows. ([100, 125], 120) gives 100. */
export function largestRating(ratings: readonly number[], ceilingA: number): number | null {
  return largestAtMost(ratings, ceilingA);
}

/** Why of `largestRating`; the result is 'In'. Null when every rating is above the ceiling. */
export function largestRatingWhy(
  ratings: readonly number[],
  ceilingA: number,
  about: Abouts<'ceilingA'> = {},
): Why | null {
  const rating = largestAtMost(ratings, ceilingA);
  if (rating === null) return null;
  const builder = whyBuilder();
  builder.list('ratings', 'A', ratings);
  builder.input('Iz', 'A', ceilingA, about.ceilingA);
  builder.step('In', 'A', 'largestAtMost(ratings, Iz)', rating, { source: 'feedrunRules' });
  return builder.done('In');
}

function recordLinkOhm(ratingA: number, dropV: number, rec: Recorder, about: Abouts<'ratingA' | 'dropV'> = {}): number {
  const drop = rec.input('Ulink', 'V', dropV, about.dropV ?? cited('linkDrop'));
  const rating = rec.input('In', 'A', ratingA, about.ratingA);
  return rec.step('Rlink', 'ohm', 'Ulink / In', drop / rating);
}

/**
 * Resistance of a fuse-link, ohm: the voltage across it at its rating, 75 mV unless told, / rating.
 * Derived from one 40 A link. 125 A gives 0.0006.
 */
export function linkOhm(ratingA: number, dropV = LINK_DROP_V): number {
  return recordLinkOhm(ratingA, dropV, NO_WHY);
}

/** Why of `linkOhm`; the result is 'Rlink'. */
export function linkOhmWhy(ratingA: number, dropV = LINK_DROP_V, about: Abouts<'ratingA' | 'dropV'> = {}): Why {
  const builder = whyBuilder();
  recordLinkOhm(ratingA, dropV, builder, about);
  return builder.done('Rlink');
}
