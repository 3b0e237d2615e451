import type { Finding, Severity } from '../answer.ts';
import type { Criterion } from '../choose/trial.ts';
import type { Facts } from '../facts.ts';
import { regionAt } from '../feeding.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** What too small a cable means: a drop is a fix, heat is a stop. */
const SEVERITY: Readonly<Record<Criterion, Severity>> = {
  drop: 'fix',
  ground: 'fix',
  fuse: 'stop',
  ampacity: 'stop',
  heating: 'stop',
};

/** The amplifier that several fuses feed together, whose ground among these cables has to bear them all; undefined where there is none. */
function fedBySeveral({ model }: Facts, cables: readonly number[]): string | undefined {
  const { circuit, sides, ways } = model;
  const grounds = cables.filter((cable) => sides.live[circuit.cables[cable]?.a ?? -1] !== true);
  const loads = grounds.flatMap((cable) => ways.behindOf(cable) ?? []).flatMap((load) => circuit.loads[load] ?? []);
  return loads.find(({ plus }) => (regionAt(model, plus)?.feeding.length ?? 0) > 1)?.fitting.id;
}

/** RULES 1: no cable in stock does it, with the rule that binds. */
export const noSizeInStock: Rule = {
  id: 'no-size-in-stock',
  sensitive: false,
  check: (facts) =>
    facts.choice.failing.flatMap(({ cables, binds }): Finding[] => {
      const [first, ...rest] = cables.map((cable) => runPlace(facts, cable));
      if (first === undefined) return [];
      const ampId = binds === 'fuse' ? fedBySeveral(facts, cables) : undefined;
      return [
        finding('no-size-in-stock', {
          severity: SEVERITY[binds],
          places: [first, ...rest],
          params: ampId === undefined ? { binds } : { binds, ampId },
          source: binds === 'drop' ? 'abycE11' : 'feedrunRules',
        }),
      ];
    }),
};
