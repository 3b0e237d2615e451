import type { Finding, Severity } from '../answer.ts';
import type { Criterion } from '../choose/trial.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** What too small a cable means: a drop is a fix, heat is a stop. */
const SEVERITY: Readonly<Record<Criterion, Severity>> = {
  drop: 'fix',
  ground: 'fix',
  fuse: 'stop',
  ampacity: 'stop',
  heating: 'stop',
};

/** RULES 1: no cable in stock does it, with the rule that binds. */
export const noSizeInStock: Rule = {
  id: 'no-size-in-stock',
  sensitive: false,
  check: (facts) =>
    facts.choice.failing.flatMap(({ cables, binds }): Finding[] => {
      const [first, ...rest] = cables.map((cable) => runPlace(facts, cable));
      if (first === undefined) return [];
      return [
        finding('no-size-in-stock', {
          severity: SEVERITY[binds],
          places: [first, ...rest],
          params: { binds },
          source: binds === 'drop' ? 'abycE11' : 'feedrunRules',
        }),
      ];
    }),
};
