import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/**
 * RULES 8: a plan has one system voltage. Sources stacked on one another give a multiple of it to what they feed, and
 * nothing here is worked out for that: stop.
 */
export const seriesBatteries: Rule = {
  id: 'series-batteries',
  sensitive: false,
  check: ({ model }) => {
    const wiring = wiringOf(model);
    if (wiring.kind !== 'series') return [];
    const [first, ...rest] = wiring.sources.flatMap((source) => model.circuit.sources[source]?.fitting ?? []);
    if (first === undefined) return [];
    return [
      finding('series-batteries', {
        severity: 'stop',
        places: [fittingPlace(first), ...rest.map(fittingPlace)],
        params: { count: wiring.count, systemV: model.settings.systemV },
        source: 'feedrunRules',
      }),
    ];
  },
};
