import type { Finding } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { fuseOf } from '../fuseOf.ts';
import { ringsBehindFuses } from '../parallel.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** The most that the fuses let into one of the cables, and the least that one carries, A; null where nothing is decided. */
function overOf(facts: Facts, cables: readonly number[]): { limitA: number; ampacityA: number } | null {
  const { model, limits } = facts;
  let worst: { limitA: number; ampacityA: number } | null = null;
  for (const index of cables) {
    const [cable, size, limitA = 0] = [model.circuit.cables[index], sizeOf(facts, index), limits[index]];
    if (cable === undefined || size === null || limitA === Infinity) continue;
    const ampacityA = cableAmpacityA(model, cable, size);
    if (worst === null || limitA * worst.ampacityA > worst.limitA * ampacityA) worst = { limitA, ampacityA };
  }
  return worst;
}

/**
 * RULES 5: of cables side by side each has a fuse of its own where it is fed. Behind one fuse that each of them carries
 * alone: note; that only all of them carry together: fix (each that burns for it is a stop of its own).
 */
export const parallelOneFuse: Rule = {
  id: 'parallel-one-fuse',
  sensitive: false,
  check: (facts) =>
    ringsBehindFuses(facts.model).flatMap((cables): Finding[] => {
      const [first, ...rest] = cables.map((cable) => runPlace(facts, cable));
      const over = overOf(facts, cables);
      if (first === undefined) return [];
      return [
        finding('parallel-one-fuse', {
          severity: over !== null && exceeds(over.limitA, over.ampacityA) ? 'fix' : 'note',
          places: [first, ...rest, ...linkPlaces(facts, fuseOf(facts.model, cables[0] ?? -1, facts.ratings))],
          params: { runs: cables.length, limitA: over?.limitA ?? null, ampacityA: over?.ampacityA ?? null },
          source: 'feedrunRules',
        }),
      ];
    }),
};
