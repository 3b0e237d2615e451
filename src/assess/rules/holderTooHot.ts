import { holderTemperatureCovered } from '../../calc/fuse/rating.ts';
import { HOLDER_RANGE_C } from '../../calc/tables/holderTemperature.ts';
import type { Finding } from '../answer.ts';
import { ambientC } from '../surroundings.ts';
import { finding, fittingPlace, ofOutput, type Rule } from './rule.ts';

/**
 * RULES 5: a rating counts with its holder's temperature factor. Where the holder is hotter than anything published
 * speaks for, no rating there is proven, whatever it is: fix.
 */
export const holderTooHot: Rule = {
  id: 'holder-too-hot',
  sensitive: true,
  check: ({ model }) =>
    model.circuit.links.flatMap(({ fitting, terminal, zone }): Finding[] => {
      const holderC = ambientC(model.settings, zone);
      if (holderTemperatureCovered(holderC)) return [];
      const one = finding('holder-too-hot', {
        severity: 'fix',
        places: [fittingPlace(fitting)],
        params: { holderC, limitC: HOLDER_RANGE_C.max, terminal },
        source: 'linkDataSheet',
      });
      return [ofOutput(terminal, one)];
    }),
};
