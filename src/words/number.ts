/** Numbers as people write them: '12,6', '1 000', '1,000 W', '1.5 kW', '3 1/2'; and as fields show them. */
import { words } from './index.ts';

/**
 * '1.000' in English and '1,000' in German: the decimal sign of the language, but three digits behind it, as a thousand
 * is written elsewhere.
 */
type Doubtful = 'grouped' | 'decimal';

interface NumberAt {
  value: number;
  rest: string;
  /** It could be read the other way. */
  inDoubt: boolean;
}

export interface InDoubt {
  ok: false;
  problem: 'inDoubt';
  readings: [number, number];
}

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

/** One kind of space, of minus and of apostrophe; signs for fractions written out. */
export const tidy = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${VULGAR[sign] ?? ''}`)
    .replace(/[′’‘]/g, "'")
    .replace('−', '-')
    .replace(/\s+/g, ' ')
    .trim();

const decimalSigns = new Map<string, string>();

export function decimalSignIn(locale: string): string {
  const sign = decimalSigns.get(locale) ?? new Intl.NumberFormat(locale).format(1.5).charAt(1);
  decimalSigns.set(locale, sign);
  return sign;
}

const MIXED = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)/;
/** Groups of three with spaces or apostrophes between; what follows a decimal sign is beyond doubt then. */
const SPACED = /^[1-9]\d{0,2}([ '])\d{3}(?:\1\d{3})*(?![\d/])(?:[.,]\d+)?/;
/** Groups of three with signs between, then perhaps the other sign and decimals. */
const SIGNED = /^[1-9]\d{0,2}([.,])\d{3}(?:\1\d{3})*(?!\d)((?!\1)[.,]\d+)?/;
const DECIMAL = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)/;

const withoutGroups = (text: string, sign: string): number => Number(text.replaceAll(sign, '').replace(',', '.'));

/** A number at the head of the text: '3', '3.5', '3,5', '1/2', '3 1/2', '3-1/2', '1 000', '1,234.5'. */
export function numberAt(text: string, locale: string, doubtful: Doubtful): NumberAt | null {
  const mixed = MIXED.exec(text);
  if (mixed !== null) {
    const [whole, top = '', bottom = ''] = mixed.slice(1);
    if (Number(bottom) === 0) return null;
    const value = Number(whole ?? 0) + Number(top) / Number(bottom);
    return { value, rest: text.slice(mixed[0].length), inDoubt: false };
  }
  const spaced = SPACED.exec(text);
  const signed = SIGNED.exec(text);
  const found = spaced ?? signed ?? DECIMAL.exec(text);
  if (found === null) return null;
  const [all, sign = ''] = found;
  const rest = text.slice(all.length);
  if (/^[.,]\d/.test(rest)) return null;
  if (spaced !== null) return { value: withoutGroups(all, sign), rest, inDoubt: false };
  if (signed === null) return { value: Number(all.replace(',', '.')), rest, inDoubt: false };
  const isSure = all.split(sign).length > 2 || signed[2] !== undefined || sign !== decimalSignIn(locale);
  const value = isSure || doubtful === 'grouped' ? withoutGroups(all, sign) : Number(all.replace(',', '.'));
  return { value, rest, inDoubt: !isSure };
}

/** What is in doubt is read both ways: a way that leads out of the bounds was not meant. */
export function settled<P>(
  read: (doubtful: Doubtful) => { value: number; inDoubt: boolean } | P,
  isProblem: (said: { value: number; inDoubt: boolean } | P) => said is P,
  min: number,
  max: number,
): { ok: true; value: number } | { ok: false; problem: P | 'tooSmall' | 'tooLarge' } | InDoubt {
  const decimal = read('decimal');
  if (isProblem(decimal)) return { ok: false, problem: decimal };
  const isWithin = (value: number) => value >= min && value <= max;
  const grouped = decimal.inDoubt ? read('grouped') : decimal;
  const other = isProblem(grouped) ? decimal.value : grouped.value;
  if (other !== decimal.value && isWithin(other)) {
    if (isWithin(decimal.value)) return { ok: false, problem: 'inDoubt', readings: [other, decimal.value] };
    return { ok: true, value: other };
  }
  if (decimal.value < min) return { ok: false, problem: 'tooSmall' };
  if (decimal.value > max) return { ok: false, problem: 'tooLarge' };
  return { ok: true, value: decimal.value };
}

const UNITS: readonly (readonly [pattern: RegExp, unit: string, factor: number])[] = [
  [/^w(atts?)?$/i, 'W', 1],
  [/^a(mps?|mperes?)?$/i, 'A', 1],
  [/^v(olts?)?$/i, 'V', 1],
  [/^(Ω|Ω|ohms?)$/i, 'Ω', 1],
  [/^ah$/i, 'Ah', 1],
  [/^f(arads?)?$/i, 'F', 1],
  [/^m$/, 'm', 1],
  [/^cm$/i, 'm', 0.01],
  [/^(in|inch|inches)$/i, 'm', 0.0254],
  [/^mm(²|2|\^2)$/i, 'mm²', 1],
  [/^%$/, '%', 1],
  [/^(°\s?c?|c)$/i, '°C', 1],
];
/** Before a unit. A large M is no milli, and no one means a million. */
const PREFIXES: readonly (readonly [pattern: RegExp, factor: number])[] = [
  [/^k(?=.)/i, 1e3],
  [/^m(?=.)/, 1e-3],
  [/^[µμu](?=.)/, 1e-6],
];

/** 'kW' -> a thousand W; null for no unit known here. */
function unitOf(text: string): { unit: string; factor: number } | null {
  for (const [pattern, unit, factor] of UNITS) if (pattern.test(text)) return { unit, factor };
  for (const [prefix, times] of PREFIXES) {
    const base = prefix.test(text) ? UNITS.find(([pattern]) => pattern.test(text.replace(prefix, ''))) : undefined;
    if (base !== undefined) return { unit: base[1], factor: base[2] * times };
  }
  return null;
}

/** The unit that a label ends with: 'Internal resistance, mΩ', 'Tightest bend, radius in mm'; null where it ends with none. */
export function unitIn(label: string): string | null {
  const last = /[ ,](\S+)$/.exec(label)?.[1] ?? '';
  return unitOf(last) === null ? null : last;
}

export type NumberProblem = 'empty' | 'unreadable' | 'otherUnit' | 'tooSmall' | 'tooLarge';
export type ParsedNumber = { ok: true; value: number } | { ok: false; problem: NumberProblem } | InDoubt;

const EXPONENT = /^(\d+(?:[.,]\d+)?e[-+]?\d+)(?![a-z\d])/i;

/** Twelve digits: 0.0042 ohm is 4.2 mohm and not a neighbour of it. */
const DIGITS = 12;

/** What a typed unit makes of the figure in the unit of the field; null where it is another's or none. */
function factorOf(typed: string, unit: string | null): number | 'unreadable' | 'otherUnit' {
  if (typed === '') return 1;
  const [given, own] = [unitOf(typed), unit === null ? null : unitOf(unit)];
  if (given === null || own === null) return 'unreadable';
  return given.unit === own.unit ? given.factor / own.factor : 'otherUnit';
}

function readAs(text: string, locale: string, unit: string | null, doubtful: Doubtful) {
  const exponent = EXPONENT.exec(text)?.[0] ?? null;
  const number =
    exponent === null
      ? numberAt(text, locale, doubtful)
      : { value: Number(exponent.replace(',', '.')), rest: text.slice(exponent.length), inDoubt: false };
  if (number === null || !Number.isFinite(number.value)) return 'unreadable';
  const factor = factorOf(number.rest.trim(), unit);
  if (typeof factor === 'string') return factor;
  const value = factor === 1 ? number.value : Number((number.value * factor).toPrecision(DIGITS));
  return { value, inDoubt: number.inDoubt };
}

/**
 * Reads a plain number within bounds, in the unit of its field, which may stand behind it. '1,000' is a thousand in
 * English; in German it could be one or a thousand, and both come back where the bounds leave both.
 */
export function parseNumber(
  text: string,
  min: number,
  max: number,
  { locale = words.locale, unit = null }: { locale?: string; unit?: string | null } = {},
): ParsedNumber {
  const tidied = tidy(text);
  if (tidied === '') return { ok: false, problem: 'empty' };
  const sign = tidied.startsWith('-') ? -1 : 1;
  const digits = sign < 0 ? tidied.slice(1).trim() : tidied;
  return settled<'unreadable' | 'otherUnit'>(
    (doubtful) => {
      const read = readAs(digits, locale, unit, doubtful);
      return typeof read === 'string' ? read : { ...read, value: sign * read.value };
    },
    (said) => typeof said === 'string',
    min,
    max,
  );
}

/** How a field shows a number, so that it is read back as the same: 1.234 as '1.2340', for '1.234' could be a thousand. */
export function writeNumber(value: number, locale = words.locale): string {
  const plain = String(Number(value.toPrecision(9)));
  const isLikeGrouped = /^-?[1-9]\d{0,2}\.\d{3}$/.test(plain);
  return `${plain}${isLikeGrouped ? '0' : ''}`.replace('.', decimalSignIn(locale));
}
