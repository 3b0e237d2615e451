import type { Finding } from '../answer.ts';
import type { Model } from '../model.ts';
import { farEnd, reach } from '../sides.ts';
import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/** Cables of the shortest way from a positive post to the return, the one that touches the return first; null without one. */
function shortingCables({ circuit, sides }: Model, plus: number): number[] | null {
  const isReturn = reach(
    [circuit.body, ...circuit.sources.map(({ minus }) => minus)],
    sides,
    ({ kind }) => kind === 'bond',
  );
  const reachedBy = new Map<number, { edge: number; from: number } | null>([[plus, null]]);
  for (const node of reachedBy.keys()) {
    if (isReturn[node] === true) {
      const cables: number[] = [];
      for (let step = reachedBy.get(node); step != null; step = reachedBy.get(step.from)) {
        if (sides.edges[step.edge]?.kind === 'cable') cables.push(step.edge);
      }
      return cables;
    }
    for (const index of sides.at[node] ?? []) {
      const edge = sides.edges[index];
      if (edge === undefined || edge.kind === 'bond') continue;
      const far = farEnd(edge, node);
      if (!reachedBy.has(far)) reachedBy.set(far, { edge: index, from: node });
    }
  }
  return null;
}

/** A positive post joined to the body or a negative post with no load between: a dead short. One finding for each source. */
export const sourceShort: Rule = {
  id: 'source-short',
  sensitive: false,
  check: (facts) => {
    const { model } = facts;
    if (wiringOf(model).kind !== 'short') return [];
    return model.circuit.sources.flatMap(({ fitting, plus }): Finding[] => {
      const [first, ...rest] = (shortingCables(model, plus) ?? []).map((cable) => runPlace(facts, cable));
      if (first === undefined) return [];
      const one = finding('source-short', {
        severity: 'stop',
        places: [first, ...rest, fittingPlace(fitting)],
        source: 'feedrunRules',
      });
      return [{ ...one, id: `${one.id}:${fitting.id}` }];
    });
  },
};
