import type { Finding } from '../answer.ts';
import { burntAs, sizeOfPieces } from '../lessThanMarked.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** Which clad wire is meant nobody told: the one of less copper. */
const LEAST = 'cca10';

/**
 * RULES 4: a cable that was scraped and is no copper all through, and is taken as copper: fix; where its fuses let in more
 * than clad wire of its size carries (0.793 of copper): stop. Everything else told of it is too good to be true until its
 * metal is entered.
 */
export const cladAsCopper: Rule = {
  id: 'clad-as-copper',
  sensitive: false,
  check: (facts) => {
    const { circuit } = facts.model;
    return circuit.groups.flatMap((pieces): Finding[] => {
      const isClad = pieces.some((piece) => {
        const cable = circuit.cables[piece];
        return cable?.run.conductor.copperThrough === false && cable.conductor.material.value === 'copper';
      });
      const [first, ...rest] = pieces.map((piece) => runPlace(facts, piece));
      if (!isClad || first === undefined) return [];
      const size = sizeOfPieces(facts, pieces);
      const burnt = size === null ? null : burntAs(facts, pieces, { size, material: LEAST });
      return [
        finding('clad-as-copper', {
          severity: burnt === null ? 'fix' : 'stop',
          places: [first, ...rest],
          params: { gauge: size, limitA: burnt?.limitA ?? null, ampacityA: burnt?.ampacityA ?? null },
          source: 'astmB566',
        }),
      ];
    });
  },
};
