import type { Finding } from '../answer.ts';
import { weakestCables } from '../supply/capacitors.ts';
import { isWithoutDevice } from '../unprotected.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/**
 * RULES 8: a capacitor that would drive more through a cable than it bears is a source; a way from it without any device:
 * stop. A way to another source is told from that one, and how far off a device may be is the unprotected length's.
 */
export const capacitorUnfused: Rule = {
  id: 'capacitor-unfused',
  sensitive: false,
  check: (facts) => {
    const { circuit } = facts.model;
    return weakestCables(facts).flatMap((weakest, capacitor): Finding[] => {
      const fitting = circuit.capacitors[capacitor]?.fitting;
      if (weakest === null || fitting === undefined || weakest.ratio < 1) return [];
      const bare = facts.unprotected
        .filter(({ source }) => circuit.starts[source]?.fitting.id === fitting.id)
        .flatMap(({ ways }) => ways.filter((way) => isWithoutDevice(way) && way.end.kind !== 'source'));
      const [first] = bare;
      if (first === undefined) return [];
      return [
        finding('capacitor-unfused', {
          severity: 'stop',
          places: [
            fittingPlace(fitting),
            ...[...new Set(bare.flatMap(({ cables }) => cables))].map((cable) => runPlace(facts, cable)),
          ],
          params: {
            farads: fitting.capacitanceF.value,
            ratio: weakest.ratio,
            runId: runPlace(facts, weakest.cable).id,
          },
          source: 'capacitorEnergy',
        }),
      ];
    });
  },
};
