/**
 * Figures as people read them. Everything inside is SI; here it becomes metres or feet and inches, gauges, amperes.
 * Numbers go through Intl, so that a second language brings its own decimal sign.
 */
import type { Settings } from '../plan/schema.ts';

export type ShowLength = Settings['showLength'];

const MM_PER_INCH = 25.4;
const INCHES_PER_FOOT = 12;
/** Short lengths are read off a tape in inches alone. */
const INCHES_ONLY_BELOW = 24;
/** A tape in a workshop is read to an eighth of an inch. */
const EIGHTHS = 8;
const FIELD_SIXTEENTHS = 16;

export interface Units {
  /** 1.2 m, 45 cm, 5 ft 3 1/2 in: three figures, for reading. */
  length(m: number): string;
  /** A length that stands beside a limit: as many digits as keep the two apart. */
  lengthBeside(m: number, limitM: number): string;
  /** For a field that is edited: to 0.1 mm or a sixteenth of an inch. */
  lengthField(m: number): string;
  /** 'sae:4' -> 'SAE 4', 'awg:1/0' -> '1/0 AWG', 'mm2:25' -> '25 mm²'. */
  gauge(id: string): string;
  area(mm2: number): string;
  current(a: number): string;
  voltage(v: number): string;
  percent(percent: number): string;
  power(w: number): string;
  resistance(ohm: number): string;
  temperature(c: number): string;
  /** A bare number, at most that many decimals. */
  number(value: number, decimals?: number): string;
  /** Figures one after another, kept apart from the decimal sign: '20 A, 30 A', with a decimal comma '20 A; 30 A'. */
  list(figures: readonly string[]): string;
  /** Six figures and no grouping, so that what is shown can be worked out again. */
  exact(value: number): string;
}

/** 3/8 from 3 and 8, reduced; '' for nothing. */
function fraction(numerator: number, denominator: number): string {
  if (numerator === 0) return '';
  let [top, bottom] = [numerator, denominator];
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${top}/${bottom}`;
}

/** 1.6129 m -> '5 ft 3 1/2 in' in eighths. */
function feetAndInches(m: number, parts: number): string {
  const total = Math.round((m * 1000 * parts) / MM_PER_INCH);
  const feet = total < parts * INCHES_ONLY_BELOW ? 0 : Math.floor(total / (parts * INCHES_PER_FOOT));
  const inches = Math.floor(total / parts) - feet * INCHES_PER_FOOT;
  const rest = fraction(total % parts, parts);
  const inchWords = [inches > 0 || rest === '' ? String(inches) : '', rest].filter((word) => word !== '').join(' ');
  const hasInches = inches > 0 || rest !== '' || feet === 0;
  return [feet > 0 ? `${feet} ft` : '', hasInches ? `${inchWords} in` : ''].filter((word) => word !== '').join(' ');
}

/** 'sae:4' -> 'SAE 4', 'mm2:1.5' -> '1.5 mm²', in German '1,5 mm²'. */
export function gaugeText(id: string, decimalSign = '.'): string {
  const [system, size = ''] = id.split(':');
  if (system === 'sae') return `SAE ${size}`;
  return system === 'awg' ? `${size} AWG` : `${size.replace('.', decimalSign)} mm²`;
}

const known: Readonly<Record<ShowLength, Map<string, Units>>> = { m: new Map(), 'ft-in': new Map() };

/**
 * The figures of one locale and one choice of length. Made once: a browser takes its time over its formats. Found without
 * a key of text: what shows figures asks anew with every move of a finger.
 */
export function unitsOf(showLength: ShowLength, locale: string): Units {
  const before = known[showLength].get(locale);
  if (before !== undefined) return before;
  const units = makeUnits(showLength, locale);
  known[showLength].set(locale, units);
  return units;
}

/** So many figures are kept as text: about as many as one plan shows. */
const MOST_KEPT = 2_000;

/** Figures are said again with every frame of a drag, and to format one takes longer than to look it up. */
function kept(say: (value: number) => string): (value: number) => string {
  const said = new Map<number, string>();
  return (value) => {
    // to the map, nothing and less than nothing are one
    const before = value === 0 ? undefined : said.get(value);
    if (before !== undefined) return before;
    if (said.size >= MOST_KEPT) said.clear();
    const text = say(value);
    said.set(value, text);
    return text;
  };
}

function makeUnits(showLength: ShowLength, locale: string): Units {
  const format = (options: Intl.NumberFormatOptions) => {
    const formatter = new Intl.NumberFormat(locale, options);
    return kept((value) => formatter.format(value));
  };
  const significant = (digits: number) => format({ maximumSignificantDigits: digits, useGrouping: false });
  const three = significant(3);
  const decimalSign = three(1.5).charAt(1);
  const whole = format({ maximumFractionDigits: 0, useGrouping: false });
  const decimals = [0, 1, 2, 3, 4].map((digits) => format({ maximumFractionDigits: digits, useGrouping: false }));
  const fixed = [0, 1, 2].map((digits) =>
    format({ minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false }),
  );
  const upTo = (value: number, digits: number) => (decimals[digits] ?? whole)(value);
  const exactly = (value: number, digits: number) => (fixed[digits] ?? whole)(value);
  const metric = (m: number) => (Math.abs(m) < 0.9995 ? `${three(m * 100)} cm` : `${three(m)} m`);

  const length = (m: number) => (showLength === 'm' ? metric(m) : feetAndInches(m, EIGHTHS));
  const lengthField = (m: number) => (showLength === 'm' ? `${upTo(m, 4)} m` : feetAndInches(m, FIELD_SIXTEENTHS));

  return {
    length,
    lengthField,
    lengthBeside: (m, limitM) => (m !== limitM && length(m) === length(limitM) ? lengthField(m) : length(m)),
    gauge: (id) => gaugeText(id, decimalSign),
    area: (mm2) => `${three(mm2)} mm²`,
    current: (a) => `${Math.abs(a) >= 100 ? whole(a) : three(a)} A`,
    voltage: (v) => `${exactly(v, 2)} V`,
    percent: (percent) => `${exactly(percent, 1)} %`,
    power: (w) => `${Math.abs(w) >= 100 ? whole(w) : three(w)} W`,
    resistance: (ohm) => (Math.abs(ohm) < 1 ? `${three(ohm * 1000)} mΩ` : `${three(ohm)} Ω`),
    temperature: (c) => `${whole(c)} °C`,
    number: (value, digits = 2) => upTo(value, digits),
    list: (figures) => figures.join(decimalSign === ',' ? '; ' : ', '),
    exact: (value) => String(Number(value.toPrecision(6))).replace('.', decimalSign),
  };
}
