import { isFed, isReversed } from '../model.ts';
import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** An amplifier that no battery reaches, or that one reaches the wrong way round: the system will not work. */
export const notFed: Rule = {
  id: 'not-fed',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap(({ fitting }, load) =>
      // with positive earth the feed is the other side, and that is what is told
      isFed(model, load) || wiringOf(model).kind === 'positiveEarth'
        ? []
        : [
            finding('not-fed', {
              severity: 'fix',
              places: [fittingPlace(fitting)],
              params: isReversed(model, load) ? { reversed: 'yes' } : {},
              source: 'feedrunRules',
            }),
          ],
    ),
};
