import type { Finding } from '../answer.ts';
import { conductorOverruns } from '../overrun.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** A reducer or pigtail ahead of a terminal may be this long, m. Source: our rules, section 5. */
const PIGTAIL_M = 0.178;

/** RULES 5: a conductor smaller than the one ahead of it, behind a fuse too large for it: stop; a short pigtail to an amplifier: note. */
export const stepDown: Rule = {
  id: 'step-down',
  sensitive: true,
  check: (facts) =>
    conductorOverruns(facts)
      .filter(({ isStepDown }) => isStepDown)
      .map(({ cable, limitA, ampacityA, link, largestA, tail, why }): Finding => {
        const isShort = tail !== null && tail.lengthM + tail.plusMinusM <= PIGTAIL_M;
        const mayBeShort = tail !== null && tail.lengthM - tail.plusMinusM <= PIGTAIL_M;
        const lengthM = tail?.lengthM ?? facts.model.circuit.cables[cable]?.length.lengthM ?? 0;
        return finding('step-down', {
          severity: isShort ? 'note' : 'stop',
          places: [runPlace(facts, cable), ...linkPlaces(facts, link)],
          params: { ratingA: limitA, ceilingA: ampacityA, largestA, lengthM, limitM: PIGTAIL_M },
          source: 'cfr183455',
          provisional: mayBeShort && !isShort,
          why,
        });
      }),
};
