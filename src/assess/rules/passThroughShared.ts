import type { Finding } from '../answer.ts';
import { sharedPassThroughs } from '../groups.ts';
import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/**
 * RULES 4: runs joined at a pass-through are one cable; more than two there would all be joined, and nothing told of them
 * holds: fix. Feed and ground among them make a short as drawn, and nothing is worked out at all: stop.
 */
export const passThroughShared: Rule = {
  id: 'pass-through-shared',
  sensitive: false,
  check: (facts) => {
    const wiring = wiringOf(facts.model);
    const shorting = new Set(wiring.kind === 'sharedPassThrough' ? wiring.nodes : []);
    return sharedPassThroughs(facts.model).map(
      ({ node, fitting, cables }): Finding =>
        finding('pass-through-shared', {
          severity: shorting.has(node) ? 'stop' : 'fix',
          places: [fittingPlace(fitting), ...cables.map((cable) => runPlace(facts, cable))],
          params: { runs: cables.length, short: shorting.has(node) ? 'yes' : 'no' },
          source: 'feedrunRules',
        }),
    );
  },
};
