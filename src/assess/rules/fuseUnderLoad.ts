import { holderFactor, smallestRating } from '../../calc/fuse/rating.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, fullOfLink, ratingOf } from '../facts.ts';
import { conductorCeilingA, heldRatings, linkEdge, makerCeilingA, mostAllowedA, tightestCable } from '../ratings.ts';
import { heatingShareAt } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import { finding, fittingPlace, linkKey, ofOutput, type Rule } from './rule.ts';

/** Largest share of a rating for long. Source: as publicly taught. */
const CONTINUOUS_SHARE = 0.8;

/** The rating that would do in place of one fixed by hand, where cables fixed by hand and the maker allow it; null where not. */
function fitsA({ model, operating }: Facts, link: number): number | null {
  const needA = operating?.needs[link] ?? null;
  if (model.circuit.links[link]?.link.ratingA === 'auto' || needA === null) return null;
  const ceilingA = mostAllowedA(model, link);
  return smallestRating(heldRatings(model, link), needA, ceilingA);
}

/** What keeps the rating down: the maker of the one amplifier behind it, or a cable fixed by hand. */
function heldDownBy({ model }: Facts, link: number): { ampId?: string; makerMaxA?: number; runId?: string } {
  const { circuit, ways } = model;
  const makerMaxA = makerCeilingA(model, link);
  if (makerMaxA < conductorCeilingA(model, link)) {
    const [load = -1] = ways.behindOf(linkEdge(model, link)) ?? [];
    const amplifier = circuit.loads[load]?.fitting;
    return amplifier === undefined ? {} : { ampId: amplifier.id, makerMaxA };
  }
  const run = circuit.cables[tightestCable(model, link) ?? -1]?.run;
  return run === undefined ? {} : { runId: run.id };
}

/** RULES 5: full current above the rating: stop, fix where only one battery alone brings it; heating current above what the link carries for long: fix. */
export const fuseUnderLoad: Rule = {
  id: 'fuse-under-load',
  sensitive: true,
  check: (facts) => {
    const { model } = facts;
    return model.circuit.links.flatMap(({ fitting, terminal, zone }, link): Finding[] => {
      const ratingA = ratingOf(facts, link);
      const fullA = fullOfLink(facts, link);
      if (ratingA === null || fullA === null) return [];
      const heatingA = fullA * heatingShareAt(model, linkEdge(model, link));
      const forLongA = ratingA * Math.min(CONTINUOUS_SHARE, holderFactor(ambientC(model.settings, zone)));
      const sharedA = facts.operating?.sharedA[linkEdge(model, link)] ?? fullA;
      const isOver = exceeds(sharedA, ratingA);
      // with one battery alone the fuse opens: the system stops, nothing burns
      const isOverAlone = exceeds(fullA, ratingA);
      if (!isOver && !isOverAlone && !exceeds(heatingA, forLongA)) return [];
      const found = finding('fuse-under-load', {
        severity: isOver ? 'stop' : 'fix',
        places: [fittingPlace(fitting)],
        params: {
          ...{ ratingA, fullA, heatingA, forLongA, terminal },
          alone: !isOver && isOverAlone ? 'yes' : null,
          fitsA: fitsA(facts, link),
          ...heldDownBy(facts, link),
        },
        source: isOver || isOverAlone ? 'feedrunRules' : 'continuousLoad',
        why: `rating:${linkKey({ fitting, terminal })}`,
      });
      return [ofOutput(terminal, found)];
    });
  },
};
