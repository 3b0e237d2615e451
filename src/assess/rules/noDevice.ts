import type { Finding } from '../answer.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/** RULES 6: a live way from a source to a load, or to another source, without any device: stop. */
export const noDevice: Rule = {
  id: 'no-device',
  sensitive: false,
  check: (facts) => {
    const { circuit } = facts.model;
    const found = new Map<string, Finding>();
    for (const { source, ways } of facts.unprotected) {
      for (const { end, cables, lengthM } of ways) {
        const far =
          end.kind === 'load'
            ? circuit.loads[end.load]?.fitting
            : end.kind === 'source' && end.source !== source
              ? circuit.sources[end.source]?.fitting
              : undefined;
        const battery = circuit.sources[source]?.fitting;
        const [first, ...rest] = cables.map((cable) => runPlace(facts, cable));
        if (far === undefined || battery === undefined || first === undefined) continue;
        const one = finding('no-device', {
          severity: 'stop',
          places: [first, ...rest, fittingPlace(battery), fittingPlace(far)],
          params: { lengthM, limitM: 0.45 },
          source: 'cfr183455',
          why: `unprotected:${battery.id}`,
        });
        // the same cable seen from both its sources, or on the way to several amplifiers, is one finding
        if (!found.has(one.id)) found.set(one.id, one);
      }
    }
    return [...found.values()];
  },
};
