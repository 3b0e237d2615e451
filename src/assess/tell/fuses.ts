import { pickFamily } from '../../calc/fuse/family.ts';
import type { FuseAnswer } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { type Facts, fullOfLink, ratingOf, sizeOf } from '../facts.ts';
import { fuseOf } from '../fuseOf.ts';
import { heldFamilies } from '../ratings.ts';
import { heatingShare } from '../states.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { ratingWhy } from '../whys/rating.ts';

/** The smallest ampacity that a link protects, A; null when it protects no cable of a decided size. */
function ceilingA(facts: Facts, protects: readonly number[]): number | null {
  const ampacities = protects.flatMap((index) => {
    const size = sizeOf(facts, index);
    const cable = facts.model.circuit.cables[index];
    return size === null || cable === undefined ? [] : [cableAmpacityA(facts.model, cable, size)];
  });
  return ampacities.length === 0 ? null : Math.min(...ampacities);
}

/** An answer for every fuse and every fused output, in the order of the plan. */
export function tellFuses(facts: Facts, book: WhyBook): FuseAnswer[] {
  const { model, ratings, operating } = facts;
  const { circuit, settings } = model;
  const fuseOfCable = circuit.cables.map((_, cable) => fuseOf(model, cable, ratings));
  return circuit.links.map((link, index): FuseAnswer => {
    const { fitting, terminal, link: wanted } = link;
    const isFixed = wanted.ratingA !== 'auto';
    const fullA = fullOfLink(facts, index);
    const ratingA = isFixed || fullA !== null ? ratingOf(facts, index) : null;
    const id = `rating:${fitting.id}${terminal === null ? '' : `.${terminal}`}`;
    const why = ratingWhy(facts, index, link, ratingA);
    return {
      fittingId: fitting.id,
      terminal,
      ratingA,
      family: ratingA === null ? null : pickFamily(ratingA, heldFamilies(model, wanted), settings.systemV),
      chosen: !isFixed,
      neededA: fullA === null ? null : (operating?.needs[index] ?? null),
      ceilingA: ceilingA(
        facts,
        fuseOfCable.flatMap((fuse, cable) => (fuse === index ? [cable] : [])),
      ),
      fullA,
      heatingA: fullA === null ? null : fullA * heatingShare(model),
      why: why === null ? null : book.file(id, () => why),
    };
  });
}
