import type { Finding } from '../answer.ts';
import type { Facts } from '../facts.ts';
import type { CableShort } from '../short/shorts.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';
import { judgedShorts } from './shortNotCleared.ts';

function told(facts: Facts, shorts: readonly CableShort[], reason: 'limits' | 'noLimits'): Finding[] {
  const [first, ...rest] = shorts;
  const point = first?.worst.worst;
  if (first === undefined || point == null) return [];
  const links = [...new Set(shorts.map(({ worst }) => worst.link))];
  const others = rest.map(({ cable }) => runPlace(facts, cable));
  const one = finding('short-uncertain', {
    severity: 'note',
    places: [runPlace(facts, first.cable), ...others, ...links.flatMap((link) => linkPlaces(facts, link))],
    params: { reason, currentA: point.currentA, runs: shorts.length },
    source: 'feedrunRules',
    why: `short-highest:${runPlace(facts, first.cable).id}`,
  });
  return [{ ...one, id: `short-uncertain:${reason}` }];
}

/**
 * RULES 7: 'cannot be told from the standard's limits': notes, one for all cables behind links whose limits leave it
 * open, one for those behind links of which no limits are held. What is open only because the longest time is held
 * beyond the last point is no finding: a link lets through no more as the current rises.
 */
export const shortUncertain: Rule = {
  id: 'short-uncertain',
  sensitive: false,
  check: (facts) => {
    const open = judgedShorts(facts).filter(({ worst }) => worst.verdict === 'cannotBeTold' && !worst.beyondLimits);
    return [
      ...told(
        facts,
        open.filter(({ worst }) => !worst.withoutLimits),
        'limits',
      ),
      ...told(
        facts,
        open.filter(({ worst }) => worst.withoutLimits),
        'noLimits',
      ),
    ];
  },
};
