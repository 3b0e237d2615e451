import type { Finding } from '../answer.ts';
import { burntAs, countedOf } from '../lessThanMarked.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/**
 * RULES 4: the size of a cable that is there is proven by its strands. Counted, they come to less metal than the size it
 * is taken as: fix; where its fuses let in more than the size that they prove carries: stop.
 */
export const sizeNotProven: Rule = {
  id: 'size-not-proven',
  sensitive: false,
  check: (facts) => {
    const { circuit } = facts.model;
    return circuit.cables.flatMap((cable, index): Finding[] => {
      const counted = countedOf(cable);
      if (counted === null || counted.isProven) return [];
      const { size, proves: proven, areaMm2: countedMm2 } = counted;
      const material = cable.conductor.material.value;
      const burnt = burntAs(facts, circuit.groups[cable.group] ?? [index], { size: proven, material });
      return [
        finding('size-not-proven', {
          severity: burnt === null ? 'fix' : 'stop',
          places: [runPlace(facts, index)],
          params: {
            gauge: size,
            proven,
            countedMm2,
            limitA: burnt?.limitA ?? null,
            ampacityA: burnt?.ampacityA ?? null,
          },
          source: 'feedrunRules',
        }),
      ];
    });
  },
};
