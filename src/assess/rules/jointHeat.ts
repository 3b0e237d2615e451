import type { Finding, Place } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, fullOf } from '../facts.ts';
import { heatingShareAt } from '../states.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** Heat of a joint from which it is a finding, W. Source: our rules, section 7. */
const MOST_W = 10;

interface HotJoint {
  readonly place: Place;
  readonly powerW: number;
  readonly jointOhm: number;
  readonly currentA: number;
  readonly measured: boolean;
}

/** The hottest joint of a cable: an end as measured, or one of those assumed. */
function hottestOf(facts: Facts, index: number): HotJoint[] {
  const { circuit, settings } = facts.model;
  const cable = circuit.cables[index];
  const full = fullOf(facts, index);
  if (cable === undefined || full === null) return [];
  const currentA = full * heatingShareAt(facts.model, index);
  const measuredOhm = Math.max(cable.run.fromJointOhm ?? 0, cable.run.toJointOhm ?? 0);
  const assumedOhm = cable.joints > 0 ? settings.jointOhm.value : 0;
  const jointOhm = Math.max(measuredOhm, assumedOhm);
  const powerW = currentA ** 2 * jointOhm;
  if (!exceeds(powerW, MOST_W)) return [];
  return [{ place: runPlace(facts, index), powerW, jointOhm, currentA, measured: measuredOhm >= assumedOhm }];
}

/**
 * RULES 7: I2R of a joint at heating current above 10 W, which no fuse ever sees: fix where it was measured, or the user
 * told what joints have; where only our own assumption says so, one note to measure them.
 */
export const jointHeat: Rule = {
  id: 'joint-heat',
  sensitive: true,
  check: (facts) => {
    const isAssumed = facts.model.settings.jointOhm.origin === 'assumed';
    const hot = facts.model.circuit.cables.flatMap((_, index) => hottestOf(facts, index));
    const told = (
      { place, powerW, jointOhm, currentA, measured }: HotJoint,
      others: readonly HotJoint[] = [],
    ): Finding =>
      finding('joint-heat', {
        severity: measured || !isAssumed ? 'fix' : 'note',
        places: [place, ...others.map((other) => other.place)],
        params: { powerW, jointOhm, currentA, joint: measured ? 'measured' : 'assumed', runs: 1 + others.length },
        source: 'feedrunRules',
      });
    const [first, ...rest] = hot
      .filter(({ measured }) => !measured)
      .toSorted((one, other) => other.powerW - one.powerW || one.place.id.localeCompare(other.place.id));
    return [
      ...hot.filter(({ measured }) => measured).map((one) => told(one)),
      ...(first === undefined ? [] : [told(first, rest)]),
    ];
  },
};
