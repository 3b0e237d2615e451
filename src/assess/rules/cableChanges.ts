import type { Finding } from '../answer.ts';
import type { Cable } from '../circuit.ts';
import { joinedCables } from '../groups.ts';
import { isUnmarked } from '../model.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** What of a cable must be alike from end to end. A class that nobody told is not compared: it counts as 60 degC anyway. */
const TRAITS: Readonly<Record<string, (cable: Cable) => string | number | null>> = {
  size: ({ conductor }) => conductor.size,
  material: ({ conductor }) => conductor.material.value,
  class: (cable) => (isUnmarked(cable) ? null : cable.conductor.insulationC.value),
};

/** RULES 4: runs joined at a pass-through are one cable: one size, material, class. */
export const cableChanges: Rule = {
  id: 'cable-changes',
  sensitive: false,
  check: (facts) =>
    joinedCables(facts.model).flatMap((pieces): Finding[] => {
      const cables = pieces.flatMap((piece) => facts.model.circuit.cables[piece] ?? []);
      const changes = Object.entries(TRAITS).flatMap(([name, traitOf]) => {
        const found = new Set(cables.map(traitOf).filter((value) => value !== null));
        return found.size > 1 ? [name] : [];
      });
      const [first, ...rest] = pieces.map((piece) => runPlace(facts, piece));
      if (changes.length === 0 || first === undefined) return [];
      return [
        finding('cable-changes', {
          severity: 'fix',
          places: [first, ...rest],
          params: { changes },
          source: 'feedrunRules',
        }),
      ];
    }),
};
