import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Every rule here takes the negative for the body's side: with the positive at the body none of them has judged anything: stop. */
export const positiveEarth: Rule = {
  id: 'positive-earth',
  sensitive: false,
  check: ({ model }) => {
    if (wiringOf(model).kind !== 'positiveEarth') return [];
    const [first, ...rest] = model.circuit.sources.map(({ fitting }) => fittingPlace(fitting));
    if (first === undefined) return [];
    return [finding('positive-earth', { severity: 'stop', places: [first, ...rest], source: 'feedrunRules' })];
  },
};
