import type { Finding } from '../answer.ts';
import { isLoadTold } from '../facts.ts';
import { terminalVolts } from '../terminal.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/**
 * RULES 3: the voltage an amplifier is left with at full output, the sources' own resistance included, below its cut-out:
 * fix. With the engine always running and no alternator drawn the posts hold.
 */
export const belowCutOut: Rule = {
  id: 'below-cut-out',
  sensitive: true,
  check: (facts) => {
    const { settings, circuit } = facts.model;
    const cutOutV = settings.cutOutV.value;
    const volts = terminalVolts(facts);
    return circuit.loads.flatMap(({ fitting }, load): Finding[] => {
      const terminalV = volts[load];
      if (!isLoadTold(facts, load) || terminalV === undefined) return [];
      if (terminalV !== null && terminalV >= cutOutV) return [];
      return [
        finding('below-cut-out', {
          severity: 'fix',
          places: [fittingPlace(fitting)],
          params: { terminalV, cutOutV },
          source: 'commonPractice',
          why: terminalV === null ? `current:${fitting.id}` : `terminal:${fitting.id}`,
        }),
      ];
    });
  },
};
