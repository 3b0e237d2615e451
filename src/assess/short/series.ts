/** Devices in series: whether the one further on opens first. */
import { type Selectivity, selectivity } from '../../calc/fuse/selectivity.ts';
import type { Facts } from '../facts.ts';
import { regionAt } from '../feeding.ts';
import { per } from '../perModel.ts';
import { familyNameOf, type RatedLink, ratedLinks } from './links.ts';
import { bothFaults, faultA } from './net.ts';

export interface SeriesPair {
  /** The device nearer to the source, and the one behind it. */
  readonly main: number;
  readonly branch: number;
  /** Null: no time limits are held for one of them. */
  readonly judged: Selectivity | null;
}

/**
 * Pairs of devices of which one lies right behind the other, and the first feeds something else as well: where it opens
 * in place of the other, more goes dark than need be. Judged up to the highest short right behind the branch.
 */
export const seriesPairs = per((facts: Facts): readonly SeriesPair[] => {
  const { model } = facts;
  const both = bothFaults(facts);
  const links = ratedLinks(facts);
  if (both === null) return [];
  const regions = new Set(
    model.circuit.links.flatMap(({ a, b }) => [regionAt(model, a) ?? [], regionAt(model, b) ?? []].flat()),
  );
  const fedNodes = new Set(model.circuit.loads.map(({ plus }) => plus));
  const alike = new Map<string, Selectivity | null>();
  /** Worked once for all the branches of one block that have the same fuse. */
  const judge = (main: RatedLink, branch: RatedLink, toA: number): Selectivity | null => {
    const key = `${main.ratingA} ${branch.ratingA} ${toA} ${familyNameOf(main)} ${familyNameOf(branch)}`;
    const before = alike.get(key);
    if (before !== undefined) return before;
    const partOf = (link: RatedLink) => ({ family: familyNameOf(link), ratingA: link.ratingA });
    const judged = selectivity(partOf(branch), partOf(main), branch.ratingA, toA);
    alike.set(key, judged);
    return judged;
  };
  return [...regions].flatMap(({ nodes, links: border, feeding }) => {
    const inside = new Set(nodes);
    const branches = border.filter((link) => !feeding.includes(link));
    const feedsLoad = nodes.some((node) => fedNodes.has(node));
    // a chain to one place: whichever opens, the same goes dark
    if (branches.length + (feedsLoad ? 1 : 0) < 2) return [];
    return feeding.flatMap((main) =>
      branches.flatMap((branch): SeriesPair[] => {
        const [mainLink, branchLink] = [links[main] ?? null, links[branch] ?? null];
        const { a = -1, b = -1 } = model.circuit.links[branch] ?? {};
        const toA = faultA(both.highest, inside.has(a) ? a : b, 0);
        if (mainLink === null || branchLink === null || !(toA > branchLink.ratingA)) return [];
        return [{ main, branch, judged: judge(mainLink, branchLink, toA) }];
      }),
    );
  });
});
