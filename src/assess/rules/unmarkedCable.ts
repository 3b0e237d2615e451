import { isUnmarked } from '../model.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** RULES 4: cable that is there and unmarked counts as 60 degC PVC, and its gauge as unproven. */
export const unmarkedCable: Rule = {
  id: 'unmarked-cable',
  sensitive: false,
  check: (facts) =>
    facts.model.circuit.cables.flatMap((cable, index) =>
      isUnmarked(cable)
        ? [finding('unmarked-cable', { severity: 'note', places: [runPlace(facts, index)], source: 'feedrunRules' })]
        : [],
    ),
};
