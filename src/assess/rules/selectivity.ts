import type { Finding } from '../answer.ts';
import { seriesPairs } from '../short/series.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/**
 * RULES 5: a note only, 'not shown by the standard's limits': the fuse ahead may open in place of the one behind it.
 * One note for all pairs, the fuse ahead first.
 */
export const selectivity: Rule = {
  id: 'selectivity',
  sensitive: false,
  check: (facts) => {
    const { links } = facts.model.circuit;
    const open = seriesPairs(facts).filter(({ judged }) => judged?.shown !== true);
    const mains = open.map(({ main }) => main);
    const branches = open.map(({ branch }) => branch);
    const fittings = [...new Set([...mains, ...branches].flatMap((link) => links[link]?.fitting ?? []))];
    const [first, ...rest] = fittings.map(fittingPlace);
    if (first === undefined) return [];
    return [
      finding('selectivity', {
        severity: 'note',
        places: [first, ...rest],
        params: {
          pairs: open.length,
          withoutLimits: open.filter(({ judged }) => judged === null).length,
          branches: new Set(branches).size,
        },
        source: 'feedrunRules',
      }),
    ] satisfies Finding[];
  },
};
