import type { Finding } from '../answer.ts';
import type { Facts } from '../facts.ts';
import { conductorOverruns, type Overrun } from '../overrun.ts';
import { linkEdge } from '../ratings.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** The one amplifier of a ground of which the fuse feeds others too: a smaller fuse belongs into its feed alone. */
function loneAmplifier({ model }: Facts, { cable, link }: Overrun): string | undefined {
  const { circuit, sides, ways } = model;
  if (link === null || sides.live[circuit.cables[cable]?.a ?? -1] === true) return undefined;
  const [load = -1, ...others] = ways.behindOf(cable) ?? [];
  const isShared = ways.countOf(linkEdge(model, link)) > 1;
  return isShared && others.length === 0 ? circuit.loads[load]?.fitting.id : undefined;
}

/** RULES 5 and 6: a fuse that lets more into a run than the run carries: stop. */
export const fuseOverConductor: Rule = {
  id: 'fuse-over-conductor',
  sensitive: true,
  check: (facts) =>
    conductorOverruns(facts)
      .filter(({ isStepDown }) => !isStepDown)
      .map((overrun): Finding => {
        const { cable, limitA, ampacityA, link, largestA, why } = overrun;
        const ampId = loneAmplifier(facts, overrun);
        return finding('fuse-over-conductor', {
          severity: 'stop',
          places: [runPlace(facts, cable), ...linkPlaces(facts, link)],
          params: { ratingA: limitA, ceilingA: ampacityA, largestA, ...(ampId !== undefined && { ampId }) },
          source: 'fcs1362',
          why,
        });
      }),
};
