import type { Finding } from '../answer.ts';
import { dropLimitV } from '../choose/trial.ts';
import { exceeds } from '../conductor.ts';
import { worstDrop } from '../worstDrop.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/** RULES 3: the drop over cables, feed and return, above the limit: fix. Auto sizes keep it; sizes fixed by hand may not. */
export const dropCables: Rule = {
  id: 'drop-cables',
  sensitive: true,
  check: (facts) => {
    const { settings, circuit } = facts.model;
    const limitV = dropLimitV(facts.model);
    return circuit.loads.flatMap(({ fitting }, load): Finding[] => {
      const worst = worstDrop(facts, load);
      if (worst === null) return [];
      const dropV = worst.feedV + worst.backV;
      if (!exceeds(dropV, limitV)) return [];
      return [
        finding('drop-cables', {
          severity: 'fix',
          places: [fittingPlace(fitting), ...[...worst.feed, ...worst.back].map((cable) => runPlace(facts, cable))],
          params: {
            dropV,
            dropPercent: (100 * dropV) / settings.systemV,
            limitV,
            limitPercent: 100 * settings.dropLimit.value,
          },
          source: 'abycE11',
          why: `drop:${fitting.id}`,
        }),
      ];
    });
  },
};
