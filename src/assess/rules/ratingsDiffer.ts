import type { Finding } from '../answer.ts';
import { amplifierOf } from '../circuit.ts';
import { demandOf, drawnA, sumOnboardA } from '../demand.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

const MOST_RATIO = 1.5;

/** RULES 2: rated output and on-board fuses that disagree by more than 1.5 times: one of them is not what it seems. */
export const ratingsDiffer: Rule = {
  id: 'ratings-differ',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap((load): Finding[] => {
      const fitting = amplifierOf(load);
      if (fitting === null) return [];
      const demand = demandOf(fitting, model.settings.systemV);
      const fusesA = sumOnboardA(fitting);
      if (demand === null || fusesA === null || fitting.ratedW === null) return [];
      const ratedA = drawnA(demand, model.settings.restV.value);
      const ratio = Math.max(ratedA / fusesA, fusesA / ratedA);
      if (ratio <= MOST_RATIO) return [];
      return [
        finding('ratings-differ', {
          severity: 'note',
          places: [fittingPlace(fitting)],
          params: { ratio, ratedA, fusesA },
          source: 'feedrunRules',
        }),
      ];
    }),
};
