import { amplifierOf } from '../circuit.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 2: the rated output holds at one load; which is wired is not told. */
export const loadUnknown: Rule = {
  id: 'load-unknown',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap((load) => {
      const amplifier = amplifierOf(load);
      return amplifier === null || amplifier.ratedW === null || amplifier.loadOhm !== null
        ? []
        : [finding('load-unknown', { severity: 'note', places: [fittingPlace(amplifier)], source: 'feedrunRules' })];
    }),
};
