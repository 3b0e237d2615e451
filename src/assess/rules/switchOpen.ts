import type { Finding } from '../answer.ts';
import { fullOf } from '../facts.ts';
import { contactEdge } from '../supply/contacts.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** A switch drawn open on the way of a load: everything is worked with it closed: note. */
export const switchOpen: Rule = {
  id: 'switch-open',
  sensitive: false,
  check: (facts) => {
    const { circuit, ways } = facts.model;
    return circuit.contacts.flatMap((contact, index): Finding[] => {
      const edge = contactEdge(facts.model, index);
      if (contact.kind !== 'switch' || contact.fitting.closed || !((fullOf(facts, edge) ?? 0) > 0)) return [];
      const fed = (ways.behindOf(edge) ?? []).flatMap((load) => circuit.loads[load]?.fitting ?? []);
      return [
        finding('switch-open', {
          severity: 'note',
          places: [fittingPlace(contact.fitting), ...fed.map(fittingPlace)],
          params: { loads: fed.length },
          source: 'feedrunRules',
        }),
      ];
    });
  },
};
