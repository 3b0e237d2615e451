import { pickFamily, standardRatings } from '../../calc/fuse/family.ts';
import { linkFamily } from '../../calc/tables/links.ts';
import type { Finding } from '../answer.ts';
import { ratingOf } from '../facts.ts';
import { heldFamilies, ownFamilies } from '../families.ts';
import { ratedLinks } from '../short/links.ts';
import { finding, fittingPlace, ofOutput, type Rule } from './rule.ts';

/** RULES 8: links are rated at least the system voltage: one that is not may go on arcing after it has melted: stop. */
export const linkUnderVoltage: Rule = {
  id: 'link-under-voltage',
  sensitive: false,
  check: (facts) => {
    const { model } = facts;
    const { systemV } = model.settings;
    const own = ownFamilies(model);
    const rated = ratedLinks(facts);
    return model.circuit.links.flatMap((device, link): Finding[] => {
      const ratingA = ratingOf(facts, link);
      // one that a family for that voltage is found for needs no closer look
      if (ratingA === null || device.fitting.kind === 'takeOff' || rated[link]?.family != null) return [];
      const offering = heldFamilies(model, device).filter((id) => standardRatings([id], own).includes(ratingA));
      if (offering.length === 0 || pickFamily(ratingA, offering, systemV, own) !== null) return [];
      const ratedV = Math.max(...offering.map((id) => linkFamily(id, own).ratedV));
      return [
        ofOutput(
          device.terminal,
          finding('link-under-voltage', {
            severity: 'stop',
            places: [fittingPlace(device.fitting)],
            params: { ratingA, ratedV, systemV, terminal: device.terminal },
            source: 'cfr183455',
          }),
        ),
      ];
    });
  },
};
