import type { Finding } from '../answer.ts';
import { conductorOverruns } from '../overrun.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** RULES 5 and 6: a fuse that lets more into a run than the run carries: stop. */
export const fuseOverConductor: Rule = {
  id: 'fuse-over-conductor',
  sensitive: true,
  check: (facts) =>
    conductorOverruns(facts)
      .filter(({ isStepDown }) => !isStepDown)
      .map(
        ({ cable, limitA, ampacityA, link, largestA, why }): Finding =>
          finding('fuse-over-conductor', {
            severity: 'stop',
            places: [runPlace(facts, cable), ...linkPlaces(facts, link)],
            params: { ratingA: limitA, ceilingA: ampacityA, largestA },
            source: 'fcs1362',
            why,
          }),
      ),
};
