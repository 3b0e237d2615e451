import { ampacityA } from '../../calc/conductor/ampacity.ts';
import { type GaugeId, gauge, gaugesOf } from '../../calc/conductor/gauge.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, fullOf } from '../facts.ts';
import { NEAR_SIZE } from '../nearSize.ts';
import { heatingShareAt } from '../states.ts';
import { feedsByLikeness, type Strap, toldStraps } from '../straps.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** A strap lies in the bay and is taken as of the class of what a feed is bought in. Source: our choice. */
const STRAP_C = 105;

/** An area between two metric sizes conducts no worse than the smaller. */
const sizeBelow = (areaMm2: number): GaugeId | null =>
  gaugesOf('mm2').findLast((size) => gauge(size).areaMm2 <= areaMm2) ?? null;

/** What the strap carries for long, A, and what music sends through it; null where that cannot be told. */
function loadOf(facts: Facts, { edge, areaMm2 }: Strap): { heatingA: number; strapA: number } | null {
  const full = fullOf(facts, edge);
  const size = sizeBelow(areaMm2);
  if (full === null || size === null) return null;
  const ambientC = facts.model.settings.bayC.value;
  const bay = { zone: 'bay', ambientC, loom: false, carpet: false } as const;
  return {
    heatingA: full * heatingShareAt(facts.model, edge),
    strapA: ampacityA({ gauge: size, material: 'copper', insulationC: STRAP_C, ...bay }),
  };
}

/**
 * RULES 4, of the factory's part of the return: it carries the current of the feed, and often is the smallest conductor
 * in the loop. Smaller than the feed: note; heating current above what it carries: fix. Only where its area is told.
 */
export const strapSmaller: Rule = {
  id: 'strap-smaller',
  sensitive: false,
  check: (facts) => {
    const straps = toldStraps(facts);
    if (straps.length === 0) return [];
    const feeds = feedsByLikeness(facts);
    return straps.flatMap((strap): Finding[] => {
      const likeness = facts.model.ways.likenessOf(strap.edge);
      const feed = likeness === null ? undefined : (feeds.get(likeness) ?? feeds.get(null));
      const load = loadOf(facts, strap);
      const isHot = load !== null && exceeds(load.heatingA, load.strapA);
      const isSmaller = feed !== undefined && exceeds(feed.copperMm2, NEAR_SIZE * strap.areaMm2);
      if (!isHot && !isSmaller) return [];
      return [
        finding('strap-smaller', {
          severity: isHot ? 'fix' : 'note',
          places: [strap.place, ...(feed === undefined ? [] : [runPlace(facts, feed.cable)])],
          params: {
            areaMm2: strap.areaMm2,
            feedGauge: feed?.size ?? null,
            heatingA: isHot ? load.heatingA : null,
            strapA: isHot ? load.strapA : null,
          },
          source: 'feedrunRules',
        }),
      ];
    });
  },
};
