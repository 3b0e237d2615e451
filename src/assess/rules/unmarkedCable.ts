import type { Finding } from '../answer.ts';
import type { Cable } from '../circuit.ts';
import { countedOf } from '../lessThanMarked.ts';
import { isUnmarked } from '../model.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** Its strands were counted and have the metal of its size, and what metal it is was looked at or told. */
function isSizeProven(cable: Cable): boolean {
  const { copperThrough, material } = cable.run.conductor;
  const isSeen = material.value === 'copper' ? copperThrough === true : material.origin !== 'assumed';
  return isSeen && countedOf(cable)?.isProven === true;
}

/** RULES 4: cable that is there and unmarked counts as 60 degC PVC, and its gauge as unproven until its strands are counted. */
export const unmarkedCable: Rule = {
  id: 'unmarked-cable',
  sensitive: false,
  check: (facts) =>
    facts.model.circuit.cables.flatMap((cable, index): Finding[] =>
      isUnmarked(cable)
        ? [
            finding('unmarked-cable', {
              severity: 'note',
              places: [runPlace(facts, index)],
              params: { proven: isSizeProven(cable) ? 'yes' : 'no' },
              source: 'feedrunRules',
            }),
          ]
        : [],
    ),
};
