import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, fullOf } from '../facts.ts';
import { acrossA, contactEdge } from '../supply/contacts.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

interface Rated {
  readonly id: string;
  readonly ratedA: number | null;
  readonly currentA: number | null;
}

function ratedParts(facts: Facts): Rated[] {
  const { circuit, plan } = facts.model;
  const contacts = circuit.contacts.flatMap((contact, index): Rated[] =>
    contact.kind === 'relay' || contact.kind === 'switch'
      ? [
          {
            id: contact.fitting.id,
            ratedA: contact.fitting.ratedA,
            currentA: fullOf(facts, contactEdge(facts.model, index)),
          },
        ]
      : [],
  );
  const bars = plan.fittings.flatMap((fitting): Rated[] => {
    if (fitting.kind !== 'bus' || fitting.ratedA === null) return [];
    const node = circuit.nodeOf({ fittingId: fitting.id, terminal: 'bus' });
    return [{ id: fitting.id, ratedA: fitting.ratedA, currentA: node === undefined ? null : acrossA(facts, node) }];
  });
  return [...contacts, ...bars];
}

/** RULES 5, of what is no fuse: full current through a relay, a switch or a bar above what it is rated for: fix. */
export const contactOverloaded: Rule = {
  id: 'contact-overloaded',
  sensitive: true,
  check: (facts) =>
    ratedParts(facts).flatMap(({ id, ratedA, currentA }): Finding[] => {
      if (ratedA === null || currentA === null || !exceeds(currentA, ratedA)) return [];
      return [
        finding('contact-overloaded', {
          severity: 'fix',
          places: [fittingPlace({ id })],
          params: { currentA, ratedA },
          source: 'feedrunRules',
        }),
      ];
    }),
};
