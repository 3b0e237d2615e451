/** German, loaded when it is asked for. Signs of units have no language: they are those of English. */
import { de, deAnswer, deLater } from './de.ts';
import type { Language } from './language.ts';

export const german: Language = {
  first: () => de,
  answer: () => deAnswer,
  later: ({ whys: { unitSigns } }) => ({ ...deLater, whys: { ...deLater.whys, unitSigns } }),
};
