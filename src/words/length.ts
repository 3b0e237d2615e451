/** Lengths as people type them: '1,5', '1.5 m', '160 cm', '5 ft 3 1/2 in', 63". */

export type LengthProblem = 'empty' | 'unreadable' | 'negative' | 'twoDecimalSigns' | 'tooShort' | 'tooLong';

export type ParsedLength = { ok: true; m: number } | { ok: false; problem: LengthProblem };

export interface LengthBounds {
  minM: number;
  maxM: number;
}

/** The unit of a number that names none. */
export type BareUnit = 'm' | 'in';

const METRES: Readonly<Record<string, number>> = { m: 1, cm: 0.01, mm: 0.001, ft: 0.3048, in: 0.0254 };

const UNIT_NAMES: readonly (readonly [RegExp, string])[] = [
  [/^(millimet(?:re|er)s?|mm)(?![a-z])/, 'mm'],
  [/^(centimet(?:re|er)s?|cm)(?![a-z])/, 'cm'],
  [/^(met(?:re|er)s?|m)(?![a-z])/, 'm'],
  [/^(feet|foot|ft)(?![a-z])\.?|^'/, 'ft'],
  [/^(inches|inch|in)(?![a-z])\.?|^"/, 'in'],
];

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

function tidy(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${VULGAR[sign] ?? ''}`)
    .replace(/''|[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}

/** A number at the head of the text: '3', '3.5', '3,5', '1/2', '3 1/2', '3-1/2'. */
function numberAt(text: string): { value: number; rest: string } | null {
  const mixed = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)/.exec(text);
  if (mixed !== null) {
    const [whole, top = '', bottom = ''] = mixed.slice(1);
    if (Number(bottom) === 0) return null;
    return { value: Number(whole ?? 0) + Number(top) / Number(bottom), rest: text.slice(mixed[0].length) };
  }
  const decimal = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)/.exec(text);
  if (decimal === null) return null;
  return { value: Number(decimal[0].replace(',', '.')), rest: text.slice(decimal[0].length) };
}

function unitAt(text: string): { unit: string; rest: string } | null {
  for (const [pattern, unit] of UNIT_NAMES) {
    const found = pattern.exec(text);
    if (found !== null) return { unit, rest: text.slice(found[0].length) };
  }
  return null;
}

/** The sum of the parts in metres, or null: each part a number with its unit, the last may leave it out. */
function sumOfParts(text: string, bareUnit: BareUnit): number | null {
  let rest = text;
  let sum = 0;
  let before: string | null = null;
  while (rest !== '') {
    const number = numberAt(rest);
    if (number === null) return null;
    const unit = unitAt(number.rest.trimStart());
    if (unit === null && number.rest.trim() !== '') return null;
    const named: string = unit?.unit ?? (before === 'ft' ? 'in' : bareUnit);
    // parts go from large to small, so that '3 in 5 ft' or '2 m 3 m' is asked about again
    if (before !== null && (unit === null ? before !== 'ft' : (METRES[named] ?? 0) >= (METRES[before] ?? 0)))
      return null;
    sum += number.value * (METRES[named] ?? Number.NaN);
    before = named;
    rest = unit === null ? '' : unit.rest.trim();
  }
  return sum;
}

/**
 * Reads a length, metres. A number without a unit counts in `bareUnit`. Never throws; what is wrong comes back by name.
 * '5 ft 3 1/2 in' gives 1.6129.
 */
export function parseLength(text: string, bareUnit: BareUnit, bounds: LengthBounds): ParsedLength {
  const tidied = tidy(text);
  if (tidied === '') return { ok: false, problem: 'empty' };
  if (/^[-−]/.test(tidied)) return { ok: false, problem: 'negative' };
  if (/\d[.,]\d*[.,]/.test(tidied)) return { ok: false, problem: 'twoDecimalSigns' };
  const m = sumOfParts(tidied, bareUnit);
  if (m === null || !Number.isFinite(m)) return { ok: false, problem: 'unreadable' };
  if (m < bounds.minM) return { ok: false, problem: 'tooShort' };
  if (m > bounds.maxM) return { ok: false, problem: 'tooLong' };
  return { ok: true, m };
}

export type ParsedNumber =
  | { ok: true; value: number }
  | { ok: false; problem: 'empty' | 'unreadable' | 'tooSmall' | 'tooLarge' };

/** Reads a plain number with either decimal sign, fractions such as 1/3 included. */
export function parseNumber(text: string, min: number, max: number): ParsedNumber {
  const tidied = tidy(text).replace('−', '-');
  if (tidied === '') return { ok: false, problem: 'empty' };
  const sign = tidied.startsWith('-') ? -1 : 1;
  const digits = sign < 0 ? tidied.slice(1) : tidied;
  const exponent = /^\d+(?:[.,]\d+)?e[-+]?\d+$/.test(digits)
    ? { value: Number(digits.replace(',', '.')), rest: '' }
    : null;
  const number = exponent ?? numberAt(digits);
  if (number === null || number.rest.trim() !== '' || !Number.isFinite(number.value))
    return { ok: false, problem: 'unreadable' };
  const value = sign * number.value;
  if (value < min) return { ok: false, problem: 'tooSmall' };
  if (value > max) return { ok: false, problem: 'tooLarge' };
  return { ok: true, value };
}
