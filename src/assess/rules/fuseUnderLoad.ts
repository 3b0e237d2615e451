import { holderFactor } from '../../calc/fuse/rating.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { fullOfLink, ratingOf } from '../facts.ts';
import { heatingShare } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Largest share of a rating for long. Source: as publicly taught. */
const CONTINUOUS_SHARE = 0.8;

/** RULES 5: full current above the rating: stop; heating current above what the link carries for long: fix. */
export const fuseUnderLoad: Rule = {
  id: 'fuse-under-load',
  sensitive: true,
  check: (facts) => {
    const { model } = facts;
    return model.circuit.links.flatMap(({ fitting, terminal, zone }, link): Finding[] => {
      const ratingA = ratingOf(facts, link);
      const fullA = fullOfLink(facts, link);
      if (ratingA === null || fullA === null) return [];
      const heatingA = fullA * heatingShare(model);
      const forLongA = ratingA * Math.min(CONTINUOUS_SHARE, holderFactor(ambientC(model.settings, zone)));
      const isOver = exceeds(fullA, ratingA);
      if (!isOver && !exceeds(heatingA, forLongA)) return [];
      const found = finding('fuse-under-load', {
        severity: isOver ? 'stop' : 'fix',
        places: [fittingPlace(fitting)],
        params: { ratingA, fullA, heatingA, forLongA, terminal },
        source: isOver ? 'feedrunRules' : 'continuousLoad',
        why: `rating:${fitting.id}${terminal === null ? '' : `.${terminal}`}`,
      });
      return [{ ...found, id: terminal === null ? found.id : `${found.id}.${terminal}` }];
    });
  },
};
