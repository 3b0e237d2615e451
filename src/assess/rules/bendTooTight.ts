import { leastBendMm, outsideMm } from '../../calc/conductor/dimensions.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { sizeOf } from '../facts.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/**
 * A bend tighter than 3 outside diameters: fix; than 5: note. Only where its radius is told: a drawn vertex is no bend.
 * Sources: FAA AC 43.13-1B for the first, the tightest that any rule allows; NEC 551.47(H) for the second.
 */
export const bendTooTight: Rule = {
  id: 'bend-too-tight',
  sensitive: false,
  check: (facts) =>
    facts.model.circuit.cables.flatMap(({ run: { bendRadiusMm } }, cable): Finding[] => {
      const size = bendRadiusMm === null ? null : sizeOf(facts, cable);
      if (bendRadiusMm === null || size === null) return [];
      const across = outsideMm(size);
      const leastMm = leastBendMm(across);
      if (!exceeds(leastMm, bendRadiusMm)) return [];
      const place = runPlace(facts, cable);
      const isFix = exceeds(leastBendMm(across, 'faaTerminal'), bendRadiusMm);
      return [
        finding('bend-too-tight', {
          severity: isFix ? 'fix' : 'note',
          places: [place],
          params: { radiusMm: bendRadiusMm, leastMm, outsideMm: across },
          source: isFix ? 'faaBend' : 'nec551',
          why: `bend:${place.id}`,
        }),
      ];
    }),
};
