import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bundleAcrossMm } from '../../../src/calc/conductor/bundle.ts';

const alike = (count: number, outsideMm = 1): number[] => Array.from({ length: count }, () => outsideMm);

describe('the round hole that cables pass together', () => {
  it('is that of one, and the sum of two', () => {
    expect(bundleAcrossMm([])).toBe(0);
    expect(bundleAcrossMm([9.4])).toBeCloseTo(9.4, 12);
    expect(bundleAcrossMm([9.4, 13.6])).toBeCloseTo(23, 12);
  });

  it('three alike: 1 + 2 / sqrt 3 of one (closest packing of equal circles, three)', () => {
    expect(bundleAcrossMm(alike(3, 10))).toBeCloseTo(10 * (1 + 2 / Math.sqrt(3)), 9);
  });

  it('three unlike: radii 3, 2 and 2, by coordinates', () => {
    // the two of radius 2 stand at (sqrt 21, +-2) from the one of 3; the round of radius R touches that from within at
    // the far side, so its centre is R - 3 along: (sqrt 21 + 3 - R)^2 + 4 = (R - 2)^2, linear in R
    const along = Math.sqrt(21) + 3;
    const round = along ** 2 / (2 * along - 4);
    expect((along - round) ** 2 + 4).toBeCloseTo((round - 2) ** 2, 9);
    expect(bundleAcrossMm([4, 6, 4])).toBeCloseTo(2 * round, 9);
  });

  it('three of radii 3, 2 and 1: the third finds room beside the two, which are 10 across', () => {
    // tangent to both and to the round of radius 5: 1 / (1/3 + 1/2 - 1/5) = 30 / 19 of radius
    expect(bundleAcrossMm([2, 4, 6])).toBeCloseTo(10, 12);
    expect(bundleAcrossMm([6, 4, 2 * (30 / 19)])).toBeCloseTo(10, 9);
    // beyond that it grows without a jump
    const beyond = bundleAcrossMm([6, 4, 2 * (30 / 19) + 0.01]);
    expect(beyond).toBeGreaterThan(10);
    expect(beyond).toBeCloseTo(10, 3);
  });

  it('three, of which one is thick: 10 and 2 side by side, and the third of 1 beside them, are 12 across', () => {
    expect(bundleAcrossMm([2, 10, 1])).toBeCloseTo(12, 12);
  });

  it.each([
    // closest packing of equal circles in a circle, across over one
    [4, 1 + Math.SQRT2],
    [5, 1 + 1 / Math.sin(Math.PI / 5)],
    [6, 3],
    [8, 1 + 1 / Math.sin(Math.PI / 7)],
    [9, 1 + 1 / Math.sin(Math.PI / 8)],
  ])('%i alike: within 3.2 hundredths of the closest packing', (count, across) => {
    expect(Math.abs(bundleAcrossMm(alike(count)) / across - 1)).toBeLessThan(0.032);
  });

  it('7 alike: 5.8 % above the closest packing, 3 of one', () => {
    expect(bundleAcrossMm(alike(7)) / 3).toBeCloseTo(1.058, 3);
  });

  it('never shrinks by a cable more or by a thicker one, and is in proportion', () => {
    const diameter = fc.double({ min: 0.5, max: 25, noNaN: true });
    const cables = fc.array(diameter, { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(cables, diameter, fc.double({ min: 1, max: 2, noNaN: true }), (outsides, one, times) => {
        const across = bundleAcrossMm(outsides);
        const [first = 0, ...rest] = outsides;
        expect(bundleAcrossMm([...outsides, one])).toBeGreaterThanOrEqual(across * (1 - 1e-9));
        expect(bundleAcrossMm([first * times, ...rest])).toBeGreaterThanOrEqual(across * (1 - 1e-9));
        expect(bundleAcrossMm(outsides.map((outside) => outside * times))).toBeCloseTo(across * times, 6);
        // no hole is smaller than the metal and plastic that has to pass it
        expect(across ** 2).toBeGreaterThanOrEqual(
          outsides.reduce((sum, outside) => sum + outside ** 2, 0) * (1 - 1e-9),
        );
      }),
    );
  });
});
