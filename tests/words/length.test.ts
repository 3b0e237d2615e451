import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BareUnit, parseLength } from '../../src/words/length.ts';
import { parseNumber } from '../../src/words/number.ts';
import { unitsOf } from '../../src/words/units.ts';

const BOUNDS = { minM: 0, maxM: 100 };
const metres = (text: string, bare: BareUnit = 'm'): number | string => {
  const read = parseLength(text, bare, BOUNDS);
  return read.ok ? read.m : read.problem;
};

describe('lengths as people type them', () => {
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [',5', 0.5],
    ['1.5 m', 1.5],
    ['160 cm', 1.6],
    ['160cm', 1.6],
    ['45 mm', 0.045],
    ['2 m 30 cm', 2.3],
    ['1 metre', 1],
    // 63 in x 25.4 mm
    ['63"', 1.6002],
    ['63 in', 1.6002],
    // 5 x 304.8 mm + 3.5 x 25.4 mm
    ['5 ft 3 1/2 in', 1.6129],
    ['5\' 3 1/2"', 1.6129],
    ['5′ 3½″', 1.6129],
    ['5ft3-1/2in', 1.6129],
    ["5' 3.5", 1.6129],
    ['1/2 in', 0.0127],
    ['17 3/4 in', 0.45085],
  ])('%s is %d m', (text, expected) => {
    expect(metres(text)).toBeCloseTo(expected, 9);
  });

  it('a number without a unit counts in the unit asked for', () => {
    expect(metres('63', 'in')).toBeCloseTo(1.6002, 9);
    expect(metres('63', 'm')).toBe(63);
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['abc', 'unreadable'],
    ['5 parsecs', 'unreadable'],
    ['3 in 5 ft', 'unreadable'],
    ['2 m 3 m', 'unreadable'],
    ['1/0 in', 'unreadable'],
    ['-1 m', 'negative'],
    ['1,500.5 m', 'twoDecimalSigns'],
    ['1.000,5', 'twoDecimalSigns'],
    ['160', 'tooLong'],
  ])("'%s' is refused as %s", (text, problem) => {
    expect(metres(text)).toBe(problem);
  });

  it('is too short below the bound asked for', () => {
    expect(parseLength('0.5 mm', 'm', { minM: 0.001, maxM: 1 })).toEqual({ ok: false, problem: 'tooShort' });
  });

  it.each([
    // what a field shows, within what it rounds to: 0.1 mm, and half of a sixteenth of an inch
    ['m', 0.000_05],
    ['ft-in', 0.0254 / 32],
  ] as const)('what a field shows in %s reads back as the same length', (showLength, within) => {
    const units = unitsOf(showLength, 'en');
    fc.assert(
      fc.property(fc.double({ min: 0, max: 99, noNaN: true }), (m) => {
        const read = parseLength(units.lengthField(m), 'm', { minM: 0, maxM: 100 });
        return read.ok && Math.abs(read.m - m) <= within + 1e-9;
      }),
    );
  });

  it('never throws, and answers a length within the bounds or a problem', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = parseLength(text, 'm', BOUNDS);
        return read.ok ? read.m >= 0 && read.m <= 100 : read.problem.length > 0;
      }),
    );
  });
});

describe('plain numbers', () => {
  it.each([
    ['12.6', 12.6],
    ['12,6', 12.6],
    ['1/3', 1 / 3],
    ['-5', -5],
    ['1e-4', 0.0001],
  ])('%s is %d', (text, value) => {
    expect(parseNumber(text, -10, 100)).toEqual({ ok: true, value });
  });

  it.each([
    ['', 'empty'],
    ['12 V', 'unreadable'],
    ['-11', 'tooSmall'],
    ['101', 'tooLarge'],
  ])("'%s' is refused as %s", (text, problem) => {
    expect(parseNumber(text, -10, 100)).toEqual({ ok: false, problem });
  });
});
