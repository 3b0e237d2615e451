import { amplifierOf } from '../circuit.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 5: an amplifier without a fuse of its own, and no largest external fuse told: ask its maker. */
export const askExternalFuse: Rule = {
  id: 'ask-external-fuse',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.loads.flatMap((load) => {
      const amplifier = amplifierOf(load);
      return amplifier === null || (amplifier.onboardFusesA ?? []).length > 0 || amplifier.externalFuseMaxA !== null
        ? []
        : [
            finding('ask-external-fuse', {
              severity: 'note',
              places: [fittingPlace(amplifier)],
              source: 'feedrunRules',
            }),
          ];
    }),
};
