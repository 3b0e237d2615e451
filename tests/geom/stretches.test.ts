import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { polylineLength } from '../../src/geom/polyline.ts';
import { stretchesByRegion } from '../../src/geom/stretches.ts';
import { at, polylineArbitrary } from './points.ts';

const toX = (name: string, minXM: number, maxXM: number) => ({
  name,
  box: { minXM, maxXM, minYM: -Infinity, maxYM: Infinity },
});
const regions = [toX('bay', -Infinity, 1), toX('cabin', 1, 3), toX('cargo', 3, Infinity)];

const lengths = (points: readonly { xM: number; yM: number }[]) =>
  stretchesByRegion(points, regions).map(({ region, lengthM }) => [region, Number(lengthM.toFixed(6))]);

describe('stretchesByRegion', () => {
  it('cuts a straight line at each wall', () => {
    expect(lengths([at(0, 0), at(4, 0)])).toEqual([
      ['bay', 1],
      ['cabin', 2],
      ['cargo', 1],
    ]);
  });

  it('cuts a slanted line where it crosses: a 3-4-5 line, a third of the way', () => {
    expect(lengths([at(0, 0), at(3, 4)])).toEqual([
      ['bay', 1.666667],
      ['cabin', 3.333333],
    ]);
  });

  it('tells a line that comes back as three stretches', () => {
    expect(lengths([at(0.5, 0), at(2, 0), at(2, 1), at(0.5, 1)])).toEqual([
      ['bay', 0.5],
      ['cabin', 3],
      ['bay', 0.5],
    ]);
  });

  it('carries the points of each stretch, its ends on the wall', () => {
    expect(stretchesByRegion([at(0, 0), at(2, 0), at(2, 1)], regions)).toEqual([
      { region: 'bay', lengthM: 1, points: [at(0, 0), at(1, 0)] },
      { region: 'cabin', lengthM: 2, points: [at(1, 0), at(2, 0), at(2, 1)] },
    ]);
  });

  it('gives a line along the wall to the first region', () => {
    expect(lengths([at(1, 0), at(1, 2)])).toEqual([['bay', 2]]);
  });

  it('names no region outside all of them', () => {
    const hot = { name: 'hot', box: { minXM: 1, maxXM: 2, minYM: 1, maxYM: 2 } };
    const told = stretchesByRegion([at(0, 1.5), at(3, 1.5)], [hot]).map(({ region, lengthM }) => [region, lengthM]);
    expect(told).toEqual([
      [null, 1],
      ['hot', 1],
      [null, 1],
    ]);
  });

  it('of overlapping regions the first holds', () => {
    const hot = { name: 'hot', box: { minXM: 0.25, maxXM: 0.75, minYM: -1, maxYM: 1 } };
    const told = stretchesByRegion([at(0, 0), at(1, 0)], [hot, ...regions]).map(({ region, lengthM }) => [
      region,
      lengthM,
    ]);
    expect(told).toEqual([
      ['bay', 0.25],
      ['hot', 0.5],
      ['bay', 0.25],
    ]);
  });

  it('is nothing for a line of no length', () => {
    expect(stretchesByRegion([at(1, 1)], regions)).toEqual([]);
    expect(stretchesByRegion([at(1, 1), at(1, 1)], regions)).toEqual([]);
  });

  it('loses no length and never names one region twice in a row', () => {
    fc.assert(
      fc.property(polylineArbitrary, (points) => {
        const stretches = stretchesByRegion(points, regions);
        const total = stretches.reduce((sum, { lengthM }) => sum + lengthM, 0);
        expect(total).toBeCloseTo(polylineLength(points), 6);
        for (const [index, { region, lengthM, points: part }] of stretches.entries()) {
          expect(region).not.toBe(stretches[index - 1]?.region);
          expect(polylineLength(part)).toBeCloseTo(lengthM, 6);
        }
      }),
    );
  });
});
