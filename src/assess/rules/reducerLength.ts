import type { Finding } from '../answer.ts';
import { exceeds } from '../conductor.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** A reducer ahead of a terminal may be this long, m. Source: our rules, section 5. */
const MOST_M = 0.178;

/** RULES 5: the thin end of a reducer, of which no size is told, has no fuse of its own: note up to 178 mm, fix beyond. */
export const reducerLength: Rule = {
  id: 'reducer-length',
  sensitive: false,
  check: ({ model }) =>
    model.circuit.contacts.flatMap((contact): Finding[] => {
      if (contact.kind !== 'reducer' || model.sides.live[contact.a] !== true) return [];
      const lengthM = contact.fitting.lengthM.value;
      return [
        finding('reducer-length', {
          severity: exceeds(lengthM, MOST_M) ? 'fix' : 'note',
          places: [fittingPlace(contact.fitting)],
          params: { lengthM, limitM: MOST_M },
          source: 'cfr183455',
        }),
      ];
    }),
};
