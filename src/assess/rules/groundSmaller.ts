import { gauge } from '../../calc/conductor/gauge.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { sizeOf } from '../facts.ts';
import { groundPairs } from '../grounds.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** RULES 4: a ground run is no smaller than the feed of its amplifier: fix. One finding for each ground. */
export const groundSmaller: Rule = {
  id: 'ground-smaller',
  sensitive: false,
  check: (facts) => {
    const found = new Map<string, Finding>();
    for (const { ground, feed } of groundPairs(facts.model)) {
      const [groundSize, feedSize] = [sizeOf(facts, ground), sizeOf(facts, feed)];
      if (groundSize === null || feedSize === null) continue;
      if (!exceeds(gauge(feedSize).areaMm2, gauge(groundSize).areaMm2)) continue;
      const one = finding('ground-smaller', {
        severity: 'fix',
        places: [runPlace(facts, ground), runPlace(facts, feed)],
        params: { gauge: groundSize, feedGauge: feedSize },
        source: 'feedrunRules',
      });
      if (!found.has(one.id)) found.set(one.id, one);
    }
    return [...found.values()];
  },
};
