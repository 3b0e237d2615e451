/** Ratings of fuses one after another, as people write them: '30 30', '30/30', '30 A, 30 A', '7,5; 20'. */
import { words } from './index.ts';
import { decimalSignIn, tidy, writeNumber } from './number.ts';

export type ParsedRatings =
  | { ok: true; values: number[] }
  | { ok: false; problem: 'unreadable' | 'tooSmall' | 'tooLarge' }
  | { ok: false; problem: 'inDoubt'; typed: string; readings: [number[], number[]] };

const isWhole = (text: string): boolean => /^(0|[1-9]\d*)$/.test(text);

/** What a part with one sign in it could be: two ratings, one with decimals, one of thousands. The likeliest first. */
function readingsOf(head: string, sign: string, tail: string, locale: string): number[][] {
  const two = isWhole(head) && isWhole(tail) ? [[Number(head), Number(tail)]] : [];
  const decimal = [[Number(`${head}.${tail}`)]];
  if (head === '0') return decimal;
  const isDecimalSign = sign === decimalSignIn(locale);
  const isGrouped = tail.length === 3 && /^[1-9]\d{0,2}$/.test(head);
  const thousands = isGrouped && (!isDecimalSign || sign === '.') ? [[Number(head + tail)]] : [];
  // a rating is not written with a nought at its end, nor does one repeat itself
  const looksLikeTwo = tail.length > 1 && (tail.endsWith('0') || tail === head);
  if (sign === ',') {
    if (!isDecimalSign) return [...two, ...thousands];
    const isDecimal = tail.length === 1 || (head.length === 1 && tail.length === 2 && !looksLikeTwo);
    return isDecimal ? decimal : two;
  }
  if (isGrouped) return isDecimalSign ? [...thousands, ...decimal] : thousands;
  return looksLikeTwo ? [...two, ...decimal] : decimal;
}

function partRatings(part: string, min: number, max: number, locale: string): ParsedRatings {
  if (isWhole(part)) return within([[Number(part)]], part, min, max);
  const one = /^(\d+)([.,])(\d+)$/.exec(part);
  if (one !== null) {
    const [, head = '', sign = '', tail = ''] = one;
    return within(readingsOf(head, sign, tail, locale), part, min, max);
  }
  const parts = part.split(',');
  const isDecimalComma = decimalSignIn(locale) === ',' && parts.some((each) => each.length === 1);
  if (parts.length < 2 || isDecimalComma || !parts.every(isWhole)) return { ok: false, problem: 'unreadable' };
  return within([parts.map(Number)], part, min, max);
}

/** The one reading that lies within the bounds. */
function within(readings: readonly number[][], typed: string, min: number, max: number): ParsedRatings {
  const [first] = readings;
  if (first === undefined) return { ok: false, problem: 'unreadable' };
  const possible = readings.filter((values) => values.every((value) => value >= min && value <= max));
  const [likely, other] = possible;
  if (likely === undefined) return { ok: false, problem: first.some((value) => value < min) ? 'tooSmall' : 'tooLarge' };
  if (other === undefined) return { ok: true, values: likely };
  return { ok: false, problem: 'inDoubt', typed, readings: [likely, other] };
}

/** Reads ratings in amperes; '' gives none. There are no fractions among ratings: '30/30' is two of them. */
export function parseRatings(text: string, min: number, max: number, locale = words.locale): ParsedRatings {
  const parts = tidy(text)
    .replace(/(\d) ?a(mps?|mperes?)?(?![a-z])/gi, '$1 ')
    .split(/[ ;+/]+/)
    .map((part) => part.replace(/^,+|,+$/g, ''))
    .filter((part) => part !== '');
  const values: number[] = [];
  for (const part of parts) {
    const read = partRatings(part, min, max, locale);
    if (!read.ok) return read;
    values.push(...read.values);
  }
  return { ok: true, values };
}

/** How a field shows ratings: one that could be two in the language's own decimals is shown with a point. */
export function writeRatings(values: readonly number[], locale = words.locale): string {
  const written = (value: number) => {
    const own = writeNumber(value, locale);
    const back = parseRatings(own, value, value, locale);
    return back.ok && back.values.length === 1 ? own : String(value);
  };
  return values.map(written).join(' ');
}
