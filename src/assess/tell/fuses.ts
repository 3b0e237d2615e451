import type { FuseAnswer } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { type Facts, fullOfLink, ratingOf, sizeOf } from '../facts.ts';
import { fuseOf } from '../fuseOf.ts';
import { linkEdge } from '../ratings.ts';
import { ratedLinks } from '../short/links.ts';
import { heatingShareAt } from '../states.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { needWhy, ratingWhy } from '../whys/rating.ts';

/** By link: the smallest ampacity that it protects, A; none for one that protects no cable of a decided size. */
function ceilingsA(facts: Facts): ReadonlyMap<number | null, number> {
  const { model, ratings } = facts;
  const ceilings = new Map<number | null, number>();
  for (const [index, cable] of model.circuit.cables.entries()) {
    const size = sizeOf(facts, index);
    if (size === null) continue;
    const link = fuseOf(model, index, ratings);
    ceilings.set(link, Math.min(ceilings.get(link) ?? Infinity, cableAmpacityA(model, cable, size)));
  }
  return ceilings;
}

/** An answer for every fuse and every fused output, in the order of the plan. */
export function tellFuses(facts: Facts, book: WhyBook): FuseAnswer[] {
  const { model, operating } = facts;
  const { circuit } = model;
  const ceilings = ceilingsA(facts);
  return circuit.links.map((link, index): FuseAnswer => {
    const { fitting, terminal, link: wanted } = link;
    const isFixed = wanted.ratingA !== 'auto';
    const fullA = fullOfLink(facts, index);
    const ratingA = isFixed || fullA !== null ? ratingOf(facts, index) : null;
    const place = `${fitting.id}${terminal === null ? '' : `.${terminal}`}`;
    // for the finding that no link held does it
    if (!isFixed && operating !== null && ratingOf(facts, index) === null)
      book.file(`need:${place}`, () => needWhy(facts, index, link));
    return {
      fittingId: fitting.id,
      terminal,
      ratingA,
      family: ratingA === null ? null : (ratedLinks(facts)[index]?.family?.id ?? null),
      chosen: !isFixed,
      neededA: fullA === null ? null : (operating?.needs[index] ?? null),
      ceilingA: ceilings.get(index) ?? null,
      fullA,
      heatingA: fullA === null ? null : fullA * heatingShareAt(model, linkEdge(model, index)),
      why: ratingA === null ? null : book.file(`rating:${place}`, () => ratingWhy(facts, index, link, ratingA)),
    };
  });
}
