import { standardRatings } from '../../calc/fuse/family.ts';
import type { Finding } from '../answer.ts';
import { heldFamilies, madeFamilies, ownFamilies } from '../families.ts';
import { heldRatings } from '../ratings.ts';
import { finding, fittingPlace, ofOutput, type Rule } from './rule.ts';

/**
 * RULES 5: a rating is a standard one. Fixed by hand at one that no family for its seat is made in, or that the family
 * told does not go to: fix. Made, but in no family in stock: note. A factory fuse is what it is.
 */
export const ratingNotHeld: Rule = {
  id: 'rating-not-held',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.links.flatMap((device, link): Finding[] => {
      const { fitting, terminal } = device;
      const { ratingA, family } = device.link;
      const held = heldRatings(model, link);
      if (ratingA === 'auto' || fitting.kind === 'takeOff' || held.includes(ratingA)) return [];
      const own = ownFamilies(model);
      const inStock = heldFamilies(model, device);
      const heldBy = (family === 'auto' ? madeFamilies(model, device) : []).filter(
        (made) => !inStock.includes(made) && standardRatings([made], own).includes(ratingA),
      );
      return [
        ofOutput(
          terminal,
          finding('rating-not-held', {
            severity: heldBy.length > 0 ? 'note' : 'fix',
            places: [fittingPlace(fitting)],
            params: {
              ratingA,
              belowA: held.findLast((offered) => offered < ratingA) ?? null,
              aboveA: held.find((offered) => offered > ratingA) ?? null,
              family: family === 'auto' ? null : family,
              heldBy,
              terminal,
            },
            source: 'feedrunRules',
          }),
        ),
      ];
    }),
};
