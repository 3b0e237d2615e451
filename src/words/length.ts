/** Lengths as people type them: '1,5', '1.5 m', '160 cm', '5 ft 3 1/2 in', 63". */
import { words } from './index.ts';
import { type InDoubt, numberAt, settled, tidy } from './number.ts';

export type LengthProblem = 'empty' | 'unreadable' | 'negative' | 'twoDecimalSigns' | 'tooShort' | 'tooLong';

export type ParsedLength = { ok: true; m: number } | { ok: false; problem: LengthProblem } | InDoubt;

export interface LengthBounds {
  minM: number;
  maxM: number;
}

/** The unit of a number that names none. */
export type BareUnit = 'm' | 'in';

const METRES: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 };

const OUT_OF_BOUNDS = { tooSmall: 'tooShort', tooLarge: 'tooLong' } as const;

const UNIT_NAMES: readonly (readonly [RegExp, string])[] = [
  [/^(millimet(?:re|er)s?|mm)(?![a-z])/, 'mm'],
  [/^(centimet(?:re|er)s?|cm)(?![a-z])/, 'cm'],
  [/^(met(?:re|er)s?|m)(?![a-z])/, 'm'],
  [/^(feet|foot|ft)(?![a-z])\.?|^'/, 'ft'],
  [/^(inches|inch|in)(?![a-z])\.?|^"/, 'in'],
];

/** Inches and feet in one kind of sign each. */
const tidyLength = (text: string): string => tidy(text.replace(/[″”“]/g, '"')).toLowerCase().replace(/''/g, '"');

function unitAt(text: string): { unit: string; rest: string } | null {
  for (const [pattern, unit] of UNIT_NAMES) {
    const found = pattern.exec(text);
    if (found !== null) return { unit, rest: text.slice(found[0].length) };
  }
  return null;
}

/** An apostrophe groups digits only before a metric unit; elsewhere it is the foot sign, which three digits cannot follow. */
const GROUPED_BY_APOSTROPHE = /(\d)'(?=\d{3}(?!\d))/g;
const withApostrophesRead = (text: string): string =>
  /^[1-9]\d{0,2}('\d{3})+([.,]\d+)? ?(mm|cm|m)$/.test(text) ? text.replace(GROUPED_BY_APOSTROPHE, '$1') : text;

/** The sum of the parts in metres, or null: each part a number with its unit, the last may leave it out. */
function sumOfParts(text: string, bareUnit: BareUnit, locale: string, doubtful: 'grouped' | 'decimal') {
  let rest = text;
  let value = 0;
  let inDoubt = false;
  let before: string | null = null;
  while (rest !== '') {
    const number = numberAt(rest, locale, doubtful);
    if (number === null) return null;
    const unit = unitAt(number.rest.trimStart());
    if (unit === null && number.rest.trim() !== '') return null;
    const named: string = unit?.unit ?? (before === 'ft' ? 'in' : bareUnit);
    // parts go from large to small, so that '3 in 5 ft' or '2 m 3 m' is asked about again
    if (before !== null && (unit === null ? before !== 'ft' : (METRES[named] ?? 0) >= (METRES[before] ?? 0)))
      return null;
    value += number.value * (METRES[named] ?? Number.NaN);
    inDoubt ||= number.inDoubt;
    before = named;
    rest = unit === null ? '' : unit.rest.trim();
  }
  return Number.isFinite(value) ? { value, inDoubt } : null;
}

/**
 * Reads a length, metres. A number without a unit counts in `bareUnit`. Never throws; what is wrong comes back by name.
 * '5 ft 3 1/2 in' gives 1.6129.
 */
export function parseLength(
  text: string,
  bareUnit: BareUnit,
  bounds: LengthBounds,
  locale = words.locale,
): ParsedLength {
  const tidied = withApostrophesRead(tidyLength(text));
  if (tidied === '') return { ok: false, problem: 'empty' };
  if (tidied.startsWith('-')) return { ok: false, problem: 'negative' };
  if (/\d[.,]\d*[.,]/.test(tidied)) return { ok: false, problem: 'twoDecimalSigns' };
  if (/'\d{3}/.test(tidied)) return { ok: false, problem: 'unreadable' };
  const said = settled<null>(
    (doubtful) => sumOfParts(tidied, bareUnit, locale, doubtful),
    (read) => read === null,
    bounds.minM,
    bounds.maxM,
  );
  if (said.ok) return { ok: true, m: said.value };
  if (said.problem === 'inDoubt') return said;
  return { ok: false, problem: said.problem === null ? 'unreadable' : OUT_OF_BOUNDS[said.problem] };
}
