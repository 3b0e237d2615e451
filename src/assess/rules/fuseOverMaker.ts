import type { Finding } from '../answer.ts';
import { amplifierOf } from '../circuit.ts';
import { exceeds } from '../conductor.ts';
import { fuseOf } from '../fuseOf.ts';
import { finding, fittingPlace, linkKey, linkPlaces, type Rule } from './rule.ts';

/** RULES 5: the amplifier maker's largest external fuse, where told, caps what the fuses let into it. */
export const fuseOverMaker: Rule = {
  id: 'fuse-over-maker',
  sensitive: false,
  check: (facts) => {
    const { model, limits, ratings } = facts;
    return model.circuit.loads.flatMap((load): Finding[] => {
      const { fitting, plus } = load;
      const makerMaxA = amplifierOf(load)?.externalFuseMaxA ?? null;
      if (makerMaxA === null) return [];
      const feeds = (model.sides.at[plus] ?? []).filter((edge) => edge < model.circuit.cables.length);
      const over = feeds.find((cable) => limits[cable] !== Infinity && exceeds(limits[cable] ?? 0, makerMaxA));
      if (over === undefined) return [];
      const link = fuseOf(model, over, ratings);
      const device = model.circuit.links[link ?? -1];
      const [fuse] = linkPlaces(facts, link);
      return [
        finding('fuse-over-maker', {
          severity: 'fix',
          places: fuse === undefined ? [fittingPlace(fitting)] : [fuse, fittingPlace(fitting)],
          params: { ratingA: limits[over] ?? null, makerMaxA },
          source: 'feedrunRules',
          why: device === undefined ? null : `rating:${linkKey(device)}`,
        }),
      ];
    });
  },
};
