import type { Finding } from '../answer.ts';
import { fullOfLink, ratingOf } from '../facts.ts';
import { conductorCeilingA, makerCeilingA } from '../ratings.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 1 and 5: no link held carries the current and spares the conductor: said, never the largest by default. */
export const noFuseQualifies: Rule = {
  id: 'no-fuse-qualifies',
  sensitive: false,
  check: (facts) => {
    const { model, operating } = facts;
    return model.circuit.links.flatMap(({ fitting, terminal, link: { ratingA } }, link): Finding[] => {
      const neededA = operating?.needs[link] ?? 0;
      if (ratingA !== 'auto' || neededA <= 0 || ratingOf(facts, link) !== null || fullOfLink(facts, link) === null)
        return [];
      const ceilingA = Math.min(conductorCeilingA(model, link), makerCeilingA(model, link));
      const found = finding('no-fuse-qualifies', {
        severity: 'stop',
        places: [fittingPlace(fitting)],
        params: { neededA, ceilingA: ceilingA === Infinity ? null : ceilingA, terminal },
        source: 'feedrunRules',
      });
      return [{ ...found, id: terminal === null ? found.id : `${found.id}.${terminal}` }];
    });
  },
};
