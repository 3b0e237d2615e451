import type { FittingOf } from '../../plan/schema.ts';
import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import type { Facts } from '../facts.ts';
import { leaving } from '../supply/contacts.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** Largest share of a rating for long. Source: as publicly taught. */
const CONTINUOUS_SHARE = 0.8;

/** What the added cables take at a take-off's stud, A: neither its own fuse nor the factory's cable to it. */
function taken(facts: Facts, { id }: FittingOf<'takeOff'>): { fullA: number; heatingA: number } | null {
  const { circuit, sides } = facts.model;
  const stud = circuit.nodeOf({ fittingId: id, terminal: 'stud' });
  if (stud === undefined) return null;
  return leaving(facts, stud, (edge) => {
    const found = sides.edges[edge];
    if (found?.kind === 'link') return circuit.links[found.index]?.fitting.id !== id;
    return found?.kind !== 'contact' || circuit.contacts[found.index]?.kind !== 'factory';
  });
}

/**
 * RULES 5, at a factory fuse: what it feeds already and ours together above its rating, or for long above 0.8 of it: fix.
 * Ours alone above it is the fuse's own matter. Its rating not told: note.
 */
export const takeoffOverloaded: Rule = {
  id: 'takeoff-overloaded',
  sensitive: true,
  check: (facts) =>
    facts.model.plan.fittings.flatMap((fitting): Finding[] => {
      if (fitting.kind !== 'takeOff') return [];
      const found = taken(facts, fitting);
      if (found === null || found.fullA === 0) return [];
      const { fullA: ours } = found;
      const { fuseA } = fitting;
      const usedA = fitting.usedA.value;
      const [fullA, heatingA] = [usedA + ours, usedA + found.heatingA];
      const told = (severity: 'fix' | 'note'): Finding =>
        finding('takeoff-overloaded', {
          severity,
          places: [fittingPlace(fitting)],
          params: { fuseA, usedA, oursA: ours, fullA, heatingA },
          source: fuseA !== null && !exceeds(fullA, fuseA) ? 'continuousLoad' : 'feedrunRules',
        });
      if (fuseA === null) return [told('note')];
      const isLink = facts.model.circuit.links.some((link) => link.fitting.id === fitting.id);
      const ownMatter = isLink && (usedA === 0 || exceeds(ours, fuseA));
      const isOver = exceeds(fullA, fuseA) || exceeds(heatingA, CONTINUOUS_SHARE * fuseA);
      return isOver && !ownMatter ? [told('fix')] : [];
    }),
};
