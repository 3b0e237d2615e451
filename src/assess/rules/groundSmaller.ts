import type { Finding } from '../answer.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { conductsLess, groundPairs, type Metal } from '../grounds.ts';
import { finding, type Rule, runPlace } from './rule.ts';

function metalOf(facts: Facts, cable: number): Metal | null {
  const [size, material] = [sizeOf(facts, cable), facts.model.circuit.cables[cable]?.conductor.material.value];
  return size === null || material === undefined ? null : { size, material };
}

/** RULES 4: a ground run is no smaller than the feed of its amplifier, by what it conducts: fix. One finding for each ground. */
export const groundSmaller: Rule = {
  id: 'ground-smaller',
  sensitive: false,
  check: (facts) => {
    const found = new Map<string, Finding>();
    for (const { ground, feed } of groundPairs(facts.model)) {
      const [of, than] = [metalOf(facts, ground), metalOf(facts, feed)];
      if (of === null || than === null || !conductsLess(of, than)) continue;
      const one = finding('ground-smaller', {
        severity: 'fix',
        places: [runPlace(facts, ground), runPlace(facts, feed)],
        params: { gauge: of.size, feedGauge: than.size, metal: of.material, feedMetal: than.material },
        source: 'feedrunRules',
      });
      if (!found.has(one.id)) found.set(one.id, one);
    }
    return [...found.values()];
  },
};
