import type { LabelWords } from '../drawing/labels.ts';
import { sheetTitle, type Units, words } from '../words/index.ts';

/** How labels say their figures. */
export function labelWords(units: Units): LabelWords {
  const { live } = words.sketch;
  return {
    length: units.length,
    taped: (m) => live.taped(units.length(m)),
    current: units.current,
    power: units.power,
    gauge: units.gauge,
    unprotected: units.length,
    continuesAt: (sheet) => live.continuesAt(sheetTitle(sheet)),
    locked: live.locked,
    separator: live.separator,
  };
}
