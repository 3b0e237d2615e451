import type { Finding } from '../answer.ts';
import { sharedPassThroughs } from '../groups.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/** RULES 4: runs joined at a pass-through are one cable; more than two there would all be joined, and nothing told of them holds. */
export const passThroughShared: Rule = {
  id: 'pass-through-shared',
  sensitive: false,
  check: (facts) =>
    sharedPassThroughs(facts.model).map(
      ({ fitting, cables }): Finding =>
        finding('pass-through-shared', {
          severity: 'fix',
          places: [fittingPlace(fitting), ...cables.map((cable) => runPlace(facts, cable))],
          params: { runs: cables.length },
          source: 'feedrunRules',
        }),
    ),
};
