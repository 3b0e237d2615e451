import { standardRatings } from '../../calc/fuse/family.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { ratingOf } from '../facts.ts';
import { madeFamilies, ownFamilies } from '../families.ts';
import { conductorCeilingA, heldRatings, makerCeilingA } from '../ratings.ts';
import { finding, fittingPlace, linkKey, ofOutput, type Rule } from './rule.ts';

/**
 * RULES 1 and 5: no link held carries the current and spares the conductor: said, never the largest by default. `ends`:
 * the links end below the need, those in stock or all that are made. Where no cable in stock does it either, the need is
 * that of the largest one, below which no other comes.
 */
export const noFuseQualifies: Rule = {
  id: 'no-fuse-qualifies',
  sensitive: false,
  check: (facts) => {
    const { model, operating } = facts;
    return model.circuit.links.flatMap((device, link): Finding[] => {
      const { fitting, terminal } = device;
      const neededA = operating?.needs[link] ?? 0;
      if (device.link.ratingA !== 'auto' || neededA <= 0 || ratingOf(facts, link) !== null) return [];
      const [cableA, makerA] = [conductorCeilingA(model, link), makerCeilingA(model, link)];
      const ceilingA = Math.min(cableA, makerA);
      const cap = makerA < cableA ? 'maker' : 'cable';
      const largestA = heldRatings(model, link).at(-1) ?? null;
      const madeA = standardRatings(madeFamilies(model, device), ownFamilies(model)).at(-1) ?? 0;
      const ends = !exceeds(neededA, largestA ?? 0) ? null : exceeds(neededA, madeA) ? 'everywhere' : 'inStock';
      const one = finding('no-fuse-qualifies', {
        severity: 'stop',
        places: [fittingPlace(fitting)],
        params: { neededA, ceilingA: ceilingA === Infinity ? null : ceilingA, cap, largestA, ends, terminal },
        source: 'feedrunRules',
        why: `need:${linkKey(device)}`,
      });
      return [ofOutput(terminal, one)];
    });
  },
};
