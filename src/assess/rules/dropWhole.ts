import type { Finding } from '../answer.ts';
import type { CircuitLoad } from '../circuit.ts';
import { exceeds } from '../conductor.ts';
import { worstWhole } from '../worstDrop.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Of the whole way, post to terminal: worth knowing beyond the first share, to be mended beyond the second. */
const NOTE_SHARE = 0.05;
export const FIX_SHARE = 0.1;

interface Losing {
  readonly fitting: CircuitLoad['fitting'];
  readonly wholeV: number;
}

/**
 * RULES 3: the whole drop, with body, strap, joints and links: fix above 10 %, each load by itself; above 5 % one note for
 * all, the greatest first: most of it is lost on the way that they share.
 */
export const dropWhole: Rule = {
  id: 'drop-whole',
  sensitive: true,
  check: (facts) => {
    const { systemV } = facts.model.settings;
    const losing = facts.model.circuit.loads.flatMap(({ fitting }, load): Losing[] => {
      const wholeV = worstWhole(facts, load)?.wholeV ?? 0;
      return exceeds(wholeV, NOTE_SHARE * systemV) ? [{ fitting, wholeV }] : [];
    });
    const isFix = ({ wholeV }: Losing): boolean => exceeds(wholeV, FIX_SHARE * systemV);
    const [worst, ...others] = losing
      .filter((one) => !isFix(one))
      .toSorted((one, other) => other.wholeV - one.wholeV || one.fitting.id.localeCompare(other.fitting.id));
    const told = (severity: 'fix' | 'note', { fitting, wholeV }: Losing, rest: readonly Losing[]): Finding =>
      finding('drop-whole', {
        severity,
        places: [fittingPlace(fitting), ...rest.map((one) => fittingPlace(one.fitting))],
        params: {
          dropV: wholeV,
          dropPercent: (100 * wholeV) / systemV,
          limitPercent: 100 * (severity === 'fix' ? FIX_SHARE : NOTE_SHARE),
          loads: 1 + rest.length,
        },
        source: severity === 'fix' ? 'abycE11' : 'feedrunRules',
        why: `drop:${fitting.id}`,
      });
    return [
      ...losing.filter(isFix).map((one) => told('fix', one, [])),
      ...(worst === undefined ? [] : [told('note', worst, others)]),
    ];
  },
};
