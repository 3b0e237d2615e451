/** Figures told apart by their words, in no language. */
import type { LabelWords } from '../../../src/drawing/labels.ts';

export const words: LabelWords = {
  length: (m) => `${m} m`,
  taped: (m) => `taped ${m} m`,
  current: (a) => `${a} A`,
  power: (w) => `${w} W`,
  gauge: (id) => `size ${id}`,
  unprotected: (m) => `!${m} m`,
  continuesAt: ({ id }) => `continues at ${id}`,
  locked: 'locked',
  separator: ', ',
};
