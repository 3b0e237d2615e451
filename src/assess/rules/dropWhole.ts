import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { worstWhole } from '../worstDrop.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Of the whole way, post to terminal: worth knowing beyond the first share, to be mended beyond the second. */
const NOTE_SHARE = 0.05;
export const FIX_SHARE = 0.1;

/** RULES 3: the whole drop, with body, strap, joints and links: note above 5 %, fix above 10 %. */
export const dropWhole: Rule = {
  id: 'drop-whole',
  sensitive: true,
  check: (facts) => {
    const { systemV } = facts.model.settings;
    return facts.model.circuit.loads.flatMap(({ fitting }, load): Finding[] => {
      const worst = worstWhole(facts, load);
      if (worst === null || !exceeds(worst.wholeV, NOTE_SHARE * systemV)) return [];
      const isFix = exceeds(worst.wholeV, FIX_SHARE * systemV);
      return [
        finding('drop-whole', {
          severity: isFix ? 'fix' : 'note',
          places: [fittingPlace(fitting)],
          params: {
            dropV: worst.wholeV,
            dropPercent: (100 * worst.wholeV) / systemV,
            limitPercent: 100 * (isFix ? FIX_SHARE : NOTE_SHARE),
          },
          source: isFix ? 'abycE11' : 'feedrunRules',
          why: `drop:${fitting.id}`,
        }),
      ];
    });
  },
};
