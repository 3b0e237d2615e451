/** Fuse-links and breakers: the families there are, those the user tells, and one that is fitted. */
import * as v from 'valibot';
import { bounded, name, someOf } from './fields.ts';

/** Families that are the user's own word. */
const OWN_FAMILIES = ['own1', 'own2', 'own3', 'own4', 'own5', 'own6'] as const;

export const linkFamily = v.picklist([
  'iso8820-3-C',
  'iso8820-3-E',
  'iso8820-3-F',
  'iso8820-5-SF30',
  'iso8820-5-SF51',
  'slotted-long',
  'slotted-short',
  'ul248-15-T',
  'post-link',
  'thermal-breaker',
  ...OWN_FAMILIES,
]);

/**
 * A family of links or breakers that the user holds: its figures are the user's own word. A link that names its `family`
 * is of it; each is told once.
 */
export const ownLinkSchema = v.strictObject({
  family: v.picklist(OWN_FAMILIES),
  name,
  /** What it fits: the holder of a fuse or a block, the post of a battery, or the place of a breaker, which it then is. */
  seat: v.picklist(['holder', 'post', 'breaker']),
  ratingsA: someOf(bounded(0.5, 2000), 60),
  /** Largest current it is stated to break, A d.c.; null: not stated. */
  breakingA: v.nullable(bounded(1, 200_000)),
  /** Largest system voltage it is made for, V d.c. */
  ratedV: bounded(1, 1000),
});

/** A fuse-link: rating and family chosen by the answer ('auto') or fixed by hand. */
export const linkSchema = v.strictObject({
  ratingA: v.union([v.literal('auto'), bounded(0.5, 2000)]),
  family: v.union([v.literal('auto'), linkFamily]),
});
