import { standardRatings } from '../calc/fuse/family.ts';
import { largestRating, smallestRating } from '../calc/fuse/rating.ts';
import type { LinkFamilyId } from '../calc/tables/links.ts';
import type { Link } from '../plan/schema.ts';
import { cableAmpacityA, fixedGauge } from './capacity.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';

/** Families a link may be taken from. */
export const heldFamilies = ({ settings }: Pick<Model, 'settings'>, link: Link): readonly LinkFamilyId[] =>
  link.family === 'auto' ? settings.linkFamilies : [link.family];

const heldByLink = perModel((model) =>
  model.circuit.links.map(({ link }) => standardRatings(heldFamilies(model, link))),
);

/** Ratings held for a link, A, ascending. */
export const heldRatings = (model: Model, link: number): readonly number[] => heldByLink(model)[link] ?? [];

export const linkEdge = ({ circuit }: Pick<Model, 'circuit'>, link: number): number => circuit.cables.length + link;

const sameLoads = (one: readonly number[] | null | undefined, other: readonly number[] | null | undefined): boolean =>
  one != null &&
  other != null &&
  one.length > 0 &&
  one.length === other.length &&
  one.every((load, at) => load === other[at]);

const conductorCeilings = perModel((model): readonly number[] => {
  const { circuit, ways } = model;
  return circuit.links.map((_, link) => {
    const mine = ways.behind[linkEdge(model, link)];
    let ceilingA = Infinity;
    for (const [index, cable] of circuit.cables.entries()) {
      const gauge = fixedGauge(cable);
      if (gauge !== null && sameLoads(ways.behind[index], mine))
        ceilingA = Math.min(ceilingA, cableAmpacityA(model, cable, gauge));
    }
    return ceilingA;
  });
});

/** What the conductors fixed by hand in series with a link allow it, A; Infinity when there is none. */
export const conductorCeilingA = (model: Model, link: number): number => conductorCeilings(model)[link] ?? Infinity;

/** The amplifier maker's largest external fuse for the one amplifier behind a link, A; Infinity when none is told. */
export function makerCeilingA({ circuit, ways }: Model, link: number): number {
  const behind = ways.behind[circuit.cables.length + link];
  const only = behind?.length === 1 ? circuit.loads[behind[0] ?? -1] : undefined;
  return only?.fitting.externalFuseMaxA ?? Infinity;
}

/**
 * Rating of a link: as fixed by hand; else the smallest held that is no smaller than the need. Where a conductor fixed
 * by hand or the amplifier's maker allows less, the conductor wins: the largest they allow. Null when none held will
 * do, or nothing flows by which to rate it.
 */
export function pickRating(model: Model, link: number, needA: number): number | null {
  const { link: wanted } = model.circuit.links[link] ?? {};
  if (wanted === undefined) return null;
  if (wanted.ratingA !== 'auto') return wanted.ratingA;
  if (needA <= 0) return null;
  const held = heldRatings(model, link);
  const enough = smallestRating(held, needA, Infinity);
  const ceilingA = Math.min(conductorCeilingA(model, link), makerCeilingA(model, link));
  return enough === null || enough <= ceilingA ? enough : largestRating(held, ceilingA);
}
