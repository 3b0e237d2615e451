import type { Finding } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { fullOf, sizeOf } from '../facts.ts';
import { heatingShare } from '../states.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** RULES 4: air as hot as the class leaves no ampacity: stop; heating current above the ampacity: fix. */
export const ampacity: Rule = {
  id: 'ampacity',
  sensitive: true,
  check: (facts) => {
    const { model } = facts;
    return model.circuit.cables.flatMap((cable, index): Finding[] => {
      const size = sizeOf(facts, index);
      if (size === null) return [];
      const ampacityA = cableAmpacityA(model, cable, size);
      const fullA = fullOf(facts, index);
      const currentA = fullA === null ? 0 : fullA * heatingShare(model);
      if (ampacityA > 0 && !exceeds(currentA, ampacityA)) return [];
      return [
        finding('ampacity', {
          severity: ampacityA === 0 ? 'stop' : 'fix',
          places: [runPlace(facts, index)],
          params: { currentA, ampacityA },
          source: 'cfr183425Table5',
          why: `ampacity:${cable.run.id}`,
        }),
      ];
    });
  },
};
