import { demandOf } from '../demand.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Neither the rated output nor the fuses of an amplifier are told: nothing can be sized. */
export const noRating: Rule = {
  id: 'no-rating',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap(({ fitting }) =>
      demandOf(fitting, model.settings.systemV) !== null
        ? []
        : [finding('no-rating', { severity: 'fix', places: [fittingPlace(fitting)], source: 'feedrunRules' })],
    ),
};
