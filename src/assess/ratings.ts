import { largestRating, smallestRating } from '../calc/fuse/rating.ts';
import { cableAmpacityA, fixedGauge } from './capacity.ts';
import { heldRatingsA } from './families.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';

const heldByLink = perModel((model) => model.circuit.links.map((device) => heldRatingsA(model, device)));

/** Ratings held for a link, A, ascending. */
export const heldRatings = (model: Model, link: number): readonly number[] => heldByLink(model)[link] ?? [];

export const linkEdge = ({ circuit }: Pick<Model, 'circuit'>, link: number): number => circuit.cables.length + link;

/** What conductors allow a link, and which of them allows least; null and Infinity where none is fixed by hand. */
interface Ceiling {
  readonly ampacityA: number;
  readonly cable: number | null;
}

const NO_CEILING: Ceiling = { ampacityA: Infinity, cable: null };

const conductorCeilings = perModel((model): readonly Ceiling[] => {
  const { circuit, ways } = model;
  const inSeries = new Map<string, Ceiling>();
  for (const [index, cable] of circuit.cables.entries()) {
    const gauge = fixedGauge(cable);
    const likeness = gauge === null ? null : ways.likenessOf(index);
    if (gauge === null || likeness === null) continue;
    const ampacityA = cableAmpacityA(model, cable, gauge);
    // a class too low for its place carries nothing, whatever the fuse: that is told of the cable, and limits no rating
    if (ampacityA === 0) continue;
    if (ampacityA < (inSeries.get(likeness)?.ampacityA ?? Infinity))
      inSeries.set(likeness, { ampacityA, cable: index });
  }
  return circuit.links.map((_, link) => inSeries.get(ways.likenessOf(linkEdge(model, link)) ?? '') ?? NO_CEILING);
});

/** What the conductors fixed by hand in series with a link allow it, A; Infinity when there is none. */
export const conductorCeilingA = (model: Model, link: number): number =>
  (conductorCeilings(model)[link] ?? NO_CEILING).ampacityA;

/** The one of them that allows least; null when there is none. */
export const tightestCable = (model: Model, link: number): number | null =>
  (conductorCeilings(model)[link] ?? NO_CEILING).cable;

/** The amplifier maker's largest external fuse for the one amplifier behind a link, A; Infinity when none is told. */
export function makerCeilingA({ circuit, ways }: Model, link: number): number {
  const edge = circuit.cables.length + link;
  const [load = -1] = ways.countOf(edge) === 1 ? (ways.behindOf(edge) ?? []) : [];
  const only = circuit.loads[load];
  return only?.fitting.kind === 'amplifier' ? (only.fitting.externalFuseMaxA ?? Infinity) : Infinity;
}

/** What both allow: conductors fixed by hand and the amplifier's maker, A; Infinity where neither sets a limit. */
export const mostAllowedA = (model: Model, link: number): number =>
  Math.min(conductorCeilingA(model, link), makerCeilingA(model, link));

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
  const ceilingA = mostAllowedA(model, link);
  return enough === null || enough <= ceilingA ? enough : largestRating(held, ceilingA);
}
