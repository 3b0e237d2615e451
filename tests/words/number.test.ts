import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/words/length.ts';
import { parseNumber, writeNumber } from '../../src/words/number.ts';
import { parseRatings, writeRatings } from '../../src/words/ratings.ts';
import { unitsOf } from '../../src/words/units.ts';

const LOCALES = ['en', 'en-US', 'de'] as const;
type Locale = (typeof LOCALES)[number];

const read = (text: string, locale: Locale, unit: string | null = 'W', [min, max] = [1, 20_000]) => {
  const said = parseNumber(text, min ?? 0, max ?? 0, { locale, unit });
  if (said.ok) return said.value;
  return said.problem === 'inDoubt' ? said.readings : said.problem;
};

describe('a number in the language that is spoken', () => {
  it.each([
    ['1000', 1000, 1000],
    ['1,000', 1000, [1000, 1]],
    ['1.000', [1000, 1], 1000],
    ['12,500', 12_500, [12_500, 12.5]],
    ['1 000', 1000, 1000],
    ['1\u00a0000', 1000, 1000],
    ['1\u202f000', 1000, 1000],
    ['1\u2009000', 1000, 1000],
    ["1'000", 1000, 1000],
    ['1’000', 1000, 1000],
    ['1 000,5', 1000.5, 1000.5],
    ['1,000.5', 1000.5, 1000.5],
    ['1.000,5', 1000.5, 1000.5],
    // what no grouping writes is a decimal sign, whichever it is
    ['1,5', 1.5, 1.5],
    ['1.5', 1.5, 1.5],
    ['1.0000', 1, 1],
    ['1234.500', 1234.5, 1234.5],
    ['1,00,0', 'unreadable', 'unreadable'],
    ['1 00', 'unreadable', 'unreadable'],
    ['10 0000', 'unreadable', 'unreadable'],
    ['1000W', 1000, 1000],
    ['1000 w', 1000, 1000],
    ['1 kW', 1000, 1000],
    ['1,5 kW', 1500, 1500],
    ['1000 watts', 1000, 1000],
    ['1000 A', 'otherUnit', 'otherUnit'],
    ['1000 MW', 'unreadable', 'unreadable'],
    ['1000 W RMS', 'unreadable', 'unreadable'],
    ['about 1000', 'unreadable', 'unreadable'],
    ['2 x 500', 'unreadable', 'unreadable'],
  ])('%s: in English %j, in German %j', (text, english, german) => {
    expect(read(text, 'en')).toEqual(english);
    expect(read(text, 'en-US')).toEqual(english);
    expect(read(text, 'de')).toEqual(german);
  });

  it('is in no doubt where only one reading lies within the bounds', () => {
    expect(read('1.125', 'en', null, [1, 1.6])).toBe(1.125);
    expect(read('1,125', 'de', null, [1, 1.6])).toBe(1.125);
    expect(read('0.500', 'en', null, [0, 1000])).toBe(0.5);
    expect(read('0,500', 'en', null, [0, 1000])).toBe(0.5);
  });

  it.each([
    ['30 mA', 'A', 0.03],
    ['0.0042 Ω', 'mΩ', 4.2],
    ['4.2 mohm', 'mΩ', 4.2],
    ['4.2', 'mΩ', 4.2],
    ['12.6 V', 'V', 12.6],
    ['70 Ah', 'Ah', 70],
    ['5 %', '%', 5],
    ['1 cm', 'mm', 10],
    ['16 mm2', 'mm²', 16],
    ['16 mm²', 'mm²', 16],
    ['2000 µF', 'F', 0.002],
    ['40 °C', '°C', 40],
  ])('%s in a field of %s is %d', (text, unit, value) => {
    expect(read(text, 'en', unit, [0, 1000])).toBeCloseTo(value, 12);
  });

  it('takes no unit where the field has none', () => {
    expect(read('1 W', 'en', null)).toBe('unreadable');
  });
});

describe('a length in the language that is spoken', () => {
  const metres = (text: string, locale: Locale) => {
    const said = parseLength(text, 'm', { minM: 0.001, maxM: 100 }, locale);
    if (said.ok) return said.m;
    return said.problem === 'inDoubt' ? said.readings : said.problem;
  };

  it.each([
    ['1,000', 'tooLong', 1],
    ['1.000', 1, 'tooLong'],
    ['1,500 m', 'tooLong', 1.5],
    ['1.500 m', 1.5, 'tooLong'],
    ['1,500 mm', 1.5, [1.5, 0.0015]],
    ['1.500 mm', [1.5, 0.0015], 1.5],
    ['1 500 mm', 1.5, 1.5],
    ["1'500 mm", 1.5, 1.5],
    ["1'500", 'unreadable', 'unreadable'],
    ['0.125 m', 0.125, 0.125],
  ])('%s: in English %j, in German %j', (text, english, german) => {
    expect(metres(text, 'en')).toEqual(english);
    expect(metres(text, 'de')).toEqual(german);
  });
});

describe('ratings one after another', () => {
  const list = (text: string, locale: Locale, [min, max] = [0.5, 500]) => {
    const said = parseRatings(text, min ?? 0, max ?? 0, locale);
    if (said.ok) return said.values;
    return said.problem === 'inDoubt' ? said.readings : said.problem;
  };

  it.each(['30 30', '30/30', '30, 30', '30,30', '30+30', '30 + 30', '30;30', '30 A / 30 A', '30A 30A', '30 / 30'])(
    '%s is 30 and 30, in any language',
    (text) => {
      for (const locale of LOCALES) expect(list(text, locale)).toEqual([30, 30]);
    },
  );

  it.each([
    ['1/2', [1, 2], [1, 2]],
    ['7.5', [7.5], [7.5]],
    ['7,5', [7, 5], [7.5]],
    ['7.5 30', [7.5, 30], [7.5, 30]],
    ['7,5; 30', [7, 5, 30], [7.5, 30]],
    ['20,25', [20, 25], [20, 25]],
    ['30,30,30', [30, 30, 30], [30, 30, 30]],
    ['7,5,10', [7, 5, 10], 'unreadable'],
    ['100,125', [100, 125], [100, 125]],
    ['30.30', [[30, 30], [30.3]], [[30, 30], [30.3]]],
    ['2 x 30', 'unreadable', 'unreadable'],
    ['30 V', 'unreadable', 'unreadable'],
    ['0.2', 'tooSmall', 'tooSmall'],
    ['600', 'tooLarge', 'tooLarge'],
  ])('%s: in English %j, in German %j', (text, english, german) => {
    expect(list(text, 'en')).toEqual(english);
    expect(list(text, 'de')).toEqual(german);
  });

  it('asks where one large rating could be two', () => {
    expect(list('1,500', 'en', [0.5, 2000])).toEqual([[1, 500], [1500]]);
    expect(list('1,000', 'en', [0.5, 2000])).toEqual([1000]);
    expect(list('1.000', 'de', [0.5, 2000])).toEqual([1000]);
  });
});

describe.each(LOCALES)('what is printed in %s reads back', (locale) => {
  const units = unitsOf('m', locale);
  const figure = fc.oneof(fc.double({ min: 0.0005, max: 20_000, noNaN: true }), fc.integer({ min: 1, max: 20_000 }));
  const shown = (value: number) => Number(value.toPrecision(9));

  it('as the same number, from a field', () => {
    fc.assert(
      fc.property(figure, fc.boolean(), (some, isNegative) => {
        const value = shown(isNegative ? -some : some);
        expect(parseNumber(writeNumber(value, locale), -1e6, 1e6, { locale })).toEqual({ ok: true, value });
      }),
    );
  });

  it.each([
    ['W', (value: number) => units.power(value)],
    ['A', (value: number) => units.current(value)],
    ['V', (value: number) => units.voltage(value)],
    ['%', (value: number) => units.percent(value)],
    ['mΩ', (value: number) => units.resistance(value / 1000)],
    ['mm²', (value: number) => units.area(value)],
  ] as const)('as what it says, a figure in %s', (unit, print) => {
    fc.assert(
      fc.property(figure, (value) => {
        const printed = print(value);
        // the oracle: the digits as printed, with the one sign in them as the decimal sign
        const [digits = '', sign = ''] = printed.split(/[\s\u00a0]/);
        const said = Number(digits.replace(',', '.')) * (unit === 'mΩ' && sign === 'Ω' ? 1000 : 1);
        const back = parseNumber(printed, 0, 1e6, { locale, unit });
        return back.ok ? Math.abs(back.value - said) <= 1e-9 * said : back.problem === 'inDoubt';
      }),
    );
  });

  it('as the same length, or a question', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 99, noNaN: true }), (m) => {
        const back = parseLength(units.lengthField(m), 'm', { minM: 0, maxM: 100 }, locale);
        expect(back.ok && Math.abs(back.m - m) <= 0.000_05 + 1e-9).toBe(true);
      }),
    );
  });

  it('as the same ratings', () => {
    const rating = fc.oneof(
      fc.integer({ min: 1, max: 500 }),
      fc.constantFrom(0.5, 1.25, 2.5, 3.15, 7.5, 12.5, 22.5, 30.25),
      fc.double({ min: 0.5, max: 500, noNaN: true }).map((value) => Number(value.toPrecision(3))),
    );
    fc.assert(
      fc.property(fc.array(rating, { minLength: 1, maxLength: 12 }), (values) => {
        expect(parseRatings(writeRatings(values, locale), 0.5, 500, locale)).toEqual({ ok: true, values });
        const short = values.filter((value) => value === Number(value.toPrecision(3)));
        const printed = units.list(short.map((value) => units.current(value)));
        expect(parseRatings(printed, 0.5, 500, locale)).toEqual({ ok: true, values: short });
      }),
    );
  });
});
