import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingShare, polygonHolds } from '../../src/geom/polygon.ts';
import { polylineLength } from '../../src/geom/polyline.ts';
import { stretchesByRegion } from '../../src/geom/stretches.ts';
import { at, polylineArbitrary } from './points.ts';

const triangle = [at(0, 0), at(2, 0), at(0, 2)];
/** A square with a notch cut in from the right. */
const notched = [at(0, 0), at(4, 0), at(2, 2), at(4, 4), at(0, 4)];

describe('polygonHolds', () => {
  it.each([
    [at(0.5, 0.5), true],
    [at(1, 1), true],
    [at(0, 0), true],
    [at(0, 1), true],
    [at(1.1, 1), false],
    [at(-0.1, 0.5), false],
    [at(3, 0), false],
  ])('tells whether (%o) lies in a triangle: %s', (point, expected) => {
    expect(polygonHolds(triangle, point)).toBe(expected);
  });

  it('leaves a notch out', () => {
    expect(polygonHolds(notched, at(3, 2))).toBe(false);
    expect(polygonHolds(notched, at(1, 2))).toBe(true);
    expect(polygonHolds(notched, at(3.5, 0.2))).toBe(true);
  });
});

describe('crossingShare', () => {
  it('tells where a segment meets a side, and that it does not', () => {
    expect(crossingShare(at(0, 0), at(4, 0), [at(1, -1), at(1, 1)])).toBe(0.25);
    expect(crossingShare(at(0, 0), at(4, 0), [at(1, 1), at(1, 2)])).toBeNull();
    expect(crossingShare(at(0, 0), at(4, 0), [at(0, 1), at(4, 1)])).toBeNull();
  });
});

describe('stretchesByRegion with polygons', () => {
  const told = (points: ReturnType<typeof at>[], corners: ReturnType<typeof at>[]) =>
    stretchesByRegion(points, [{ name: 'hot', corners }]).map(({ region, lengthM }) => [
      region,
      Number(lengthM.toFixed(6)),
    ]);

  it('cuts a line where it goes in and comes out', () => {
    expect(told([at(-1, 1), at(3, 1)], triangle)).toEqual([
      [null, 1],
      ['hot', 1],
      [null, 2],
    ]);
    expect(told([at(3, -1), at(3, 5)], notched)).toEqual([
      [null, 1],
      ['hot', 1],
      [null, 2],
      ['hot', 1],
      [null, 1],
    ]);
  });

  it('counts a line along a side as inside', () => {
    expect(told([at(-1, 0), at(3, 0)], triangle)).toEqual([
      [null, 1],
      ['hot', 2],
      [null, 1],
    ]);
  });

  it('loses no length, and a rectangle given by its corners cuts as the box does', () => {
    const box = { minXM: -1, minYM: -1, maxXM: 2, maxYM: 1.5 };
    const corners = [at(-1, -1), at(2, -1), at(2, 1.5), at(-1, 1.5)];
    fc.assert(
      fc.property(polylineArbitrary, (points) => {
        const hotM = (region: { box: typeof box } | { corners: typeof corners }) => {
          const parts = stretchesByRegion(points, [{ name: 'hot', ...region }]);
          expect(parts.reduce((sum, part) => sum + part.lengthM, 0)).toBeCloseTo(polylineLength(points), 6);
          return parts.reduce((sum, part) => sum + (part.region === 'hot' ? part.lengthM : 0), 0);
        };
        expect(hotM({ corners })).toBeCloseTo(hotM({ box }), 6);
      }),
    );
  });
});
