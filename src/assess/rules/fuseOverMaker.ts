import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { fuseOf } from '../fuseOf.ts';
import { finding, fittingPlace, linkPlaces, type Rule } from './rule.ts';

/** RULES 5: the amplifier maker's largest external fuse, where told, caps what the fuses let into it. */
export const fuseOverMaker: Rule = {
  id: 'fuse-over-maker',
  sensitive: false,
  check: (facts) => {
    const { model, limits, ratings } = facts;
    return model.circuit.loads.flatMap(({ fitting, plus }): Finding[] => {
      const makerMaxA = fitting.externalFuseMaxA;
      if (makerMaxA === null) return [];
      const feeds = model.circuit.cables.flatMap(({ a, b }, cable) => (a === plus || b === plus ? [cable] : []));
      const over = feeds.find((cable) => limits[cable] !== Infinity && exceeds(limits[cable] ?? 0, makerMaxA));
      if (over === undefined) return [];
      const [fuse] = linkPlaces(facts, fuseOf(model, over, ratings));
      return [
        finding('fuse-over-maker', {
          severity: 'fix',
          places: fuse === undefined ? [fittingPlace(fitting)] : [fuse, fittingPlace(fitting)],
          params: { ratingA: limits[over] ?? null, makerMaxA },
          source: 'feedrunRules',
        }),
      ];
    });
  },
};
