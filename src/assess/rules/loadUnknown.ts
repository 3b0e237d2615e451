import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 2: the rated output holds at one load; which is wired is not told. */
export const loadUnknown: Rule = {
  id: 'load-unknown',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap(({ fitting }) =>
      fitting.ratedW === null || fitting.loadOhm !== null
        ? []
        : [finding('load-unknown', { severity: 'note', places: [fittingPlace(fitting)], source: 'feedrunRules' })],
    ),
};
