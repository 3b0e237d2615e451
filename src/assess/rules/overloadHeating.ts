import type { Finding } from '../answer.ts';
import { carriesNothing, fullOf } from '../facts.ts';
import { fuseOf } from '../fuseOf.ts';
import { hotAtOverload, type Overloaded } from '../overload.ts';
import { conductorOverruns } from '../overrun.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** RULES 4: in the bay, 1.35 x the rating held above class + 50 K: fix. One finding for each fuse, the hottest cable first. */
export const overloadHeating: Rule = {
  id: 'overload-heating',
  sensitive: true,
  check: (facts) => {
    const { model, ratings, limits } = facts;
    const overrun = new Set(conductorOverruns(facts).map(({ cable }) => cable));
    const byFuse = new Map<string, { cable: number; hot: Overloaded }[]>();
    for (const [cable] of model.circuit.cables.entries()) {
      const size = facts.choice.sizes[cable] ?? null;
      const limitA = limits[cable] ?? 0;
      // a fuse too large for its cable has a finding of its own
      if (size === null || overrun.has(cable) || carriesNothing(facts, cable) || !((fullOf(facts, cable) ?? 0) > 0))
        continue;
      const hot = hotAtOverload(model, cable, size, limitA);
      if (hot === null) continue;
      const key = `${fuseOf(model, cable, ratings)} ${limitA}`;
      byFuse.set(key, [...(byFuse.get(key) ?? []), { cable, hot }]);
    }
    return [...byFuse.values()].flatMap((alike): Finding[] => {
      const [first, ...rest] = alike.toSorted(
        (one, other) => (other.hot.conductorC ?? Infinity) - (one.hot.conductorC ?? Infinity),
      );
      if (first === undefined) return [];
      const { conductorC, limitC, currentA } = first.hot;
      return [
        finding('overload-heating', {
          severity: 'fix',
          places: [
            runPlace(facts, first.cable),
            ...rest.map(({ cable }) => runPlace(facts, cable)),
            ...linkPlaces(facts, fuseOf(model, first.cable, ratings)),
          ],
          params: { conductorC, limitC, currentA, ratingA: limits[first.cable] ?? null },
          source: 'iso6722Overload',
        }),
      ];
    });
  },
};
