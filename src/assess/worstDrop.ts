import { type WayDrop, wayDrop } from './drop.ts';
import { type Facts, isLoadTold } from './facts.ts';

const greatest = (of: readonly WayDrop[], figure: (drop: WayDrop) => number): WayDrop | null =>
  of.reduce<WayDrop | null>((worst, drop) => (worst === null || figure(drop) > figure(worst) ? drop : worst), null);

function dropsOf(facts: Facts, load: number): WayDrop[] {
  if (!isLoadTold(facts, load)) return [];
  return (facts.operating?.states ?? []).map((point) => wayDrop(facts.model, point, load));
}

/** The drop of a load over cables in the state where it is greatest; null where it cannot be told. */
export const worstDrop = (facts: Facts, load: number): WayDrop | null =>
  greatest(dropsOf(facts, load), ({ feedV, backV }) => feedV + backV);

/** The drop of a load over the whole way in the state where that is greatest; null where it cannot be told. */
export const worstWhole = (facts: Facts, load: number): WayDrop | null =>
  greatest(dropsOf(facts, load), ({ wholeV }) => wholeV);
