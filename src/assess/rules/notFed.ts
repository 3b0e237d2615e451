import { isFed } from '../model.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** An amplifier that no battery reaches: the system will not work. */
export const notFed: Rule = {
  id: 'not-fed',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap(({ fitting }, load) =>
      isFed(model, load)
        ? []
        : [finding('not-fed', { severity: 'fix', places: [fittingPlace(fitting)], source: 'feedrunRules' })],
    ),
};
