import { checkNetwork } from './check.ts';
import { mergeRigid } from './merge.ts';
import { operatingPoint } from './operating.ts';
import { resultOf } from './result.ts';
import { buildSystem } from './system.ts';
import type { Network, NetworkResult } from './types.ts';

/**
 * Direct-current operating point: volts at every node, amps through every element.
 * Nodal analysis with sources without resistance merged away; constant-power loads by Newton's method from no load.
 * Everything in V, A, ohm, W. Refuses, as an answer, contradicting sources and loads that cannot be carried.
 * 12 V held at the posts, 0.01 ohm, 1000 W: V = (12 + sqrt(144 - 4 x 1000 x 0.01)) / 2 = 11.099 V, 90.1 A.
 */
export function solveNetwork(network: Network): NetworkResult {
  checkNetwork(network);
  const merged = mergeRigid(network);
  if ('conflict' in merged) {
    const { element, index } = merged.conflict;
    return { ok: false, reason: 'sourcesConflict', element, index };
  }
  const system = buildSystem(network, merged);
  const operating = operatingPoint(system);
  if (!operating.ok) return { ok: false, reason: 'cannotCarry', largestShare: operating.largestShare };
  return resultOf(network, merged, system, operating);
}
