import type { Finding } from '../answer.ts';
import { isLoadTold } from '../facts.ts';
import { restTerminalV } from '../terminal.ts';
import { worstWhole } from '../worstDrop.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/**
 * RULES 3: the voltage an amplifier is left with at full output, engine off and the battery's own resistance included,
 * below its cut-out: fix. With the engine always running the alternator holds the posts.
 */
export const belowCutOut: Rule = {
  id: 'below-cut-out',
  sensitive: true,
  check: (facts) => {
    const { settings, circuit } = facts.model;
    const cutOutV = settings.cutOutV.value;
    const atRest = settings.engineAlwaysRunning ? null : restTerminalV(facts);
    return circuit.loads.flatMap(({ fitting }, load): Finding[] => {
      const held = worstWhole(facts, load);
      if (!isLoadTold(facts, load) || held === null) return [];
      const heldV = held.point.volts - held.wholeV;
      const terminalV = atRest === null ? heldV : (atRest[load] ?? null);
      if (terminalV !== null && terminalV >= cutOutV) return [];
      return [
        finding('below-cut-out', {
          severity: 'fix',
          places: [fittingPlace(fitting)],
          params: { terminalV, cutOutV },
          source: 'commonPractice',
          why: `current:${fitting.id}`,
        }),
      ];
    });
  },
};
