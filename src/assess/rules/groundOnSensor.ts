import type { Finding, Place } from '../answer.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/**
 * Common practice: a ground at the battery goes to the body side of the sensor on its negative post, never onto the post:
 * what goes past it is not counted, and the vehicle reckons its battery wrongly: fix. Where nobody told whether the
 * vehicle's own battery (it has a factory strap) carries one: note.
 */
export const groundOnSensor: Rule = {
  id: 'ground-on-sensor',
  sensitive: false,
  check: (facts) => {
    const { circuit, plan } = facts.model;
    const asked = plan.fittings.flatMap((fitting) => {
      if (fitting.kind !== 'battery' || fitting.sensedNegative === false) return [];
      return fitting.sensedNegative === true || fitting.strap !== null ? [fitting] : [];
    });
    if (asked.length === 0) return [];
    const onPost = new Map<string, Place[]>(asked.map(({ id }) => [id, []]));
    for (const [cable, { run }] of circuit.cables.entries()) {
      for (const { fittingId, terminal } of [run.from, run.to]) {
        if (terminal === 'negative') onPost.get(fittingId)?.push(runPlace(facts, cable));
      }
    }
    return asked.flatMap((battery): Finding[] => {
      const [first, ...rest] = onPost.get(battery.id) ?? [];
      if (first === undefined) return [];
      return [
        finding('ground-on-sensor', {
          severity: battery.sensedNegative === true ? 'fix' : 'note',
          places: [fittingPlace(battery), first, ...rest],
          params: { runs: 1 + rest.length },
          source: 'commonPractice',
        }),
      ];
    });
  },
};
