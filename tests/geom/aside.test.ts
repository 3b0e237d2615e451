import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asideOf, besideAt } from '../../src/geom/aside.ts';
import { distance, distanceToSegment } from '../../src/geom/point.ts';
import { at, pointArbitrary, polylineArbitrary } from './points.ts';

const rounded = (points: readonly { xM: number; yM: number }[]) =>
  points.map(({ xM, yM }) => [Number(xM.toFixed(9)) + 0, Number(yM.toFixed(9)) + 0]);

describe('a line beside another', () => {
  it('leaves its ends for a parallel, to the right of the way as seen on the screen', () => {
    expect(rounded(asideOf([at(0, 0), at(10, 0)], 1, 2))).toEqual([
      [0, 0],
      [2, 1],
      [8, 1],
      [10, 0],
    ]);
    expect(rounded(asideOf([at(10, 0), at(0, 0)], 1, 2))).toEqual([
      [10, 0],
      [8, -1],
      [2, -1],
      [0, 0],
    ]);
  });

  it('goes round a corner outside or inside of it, as far from both pieces', () => {
    const line = [at(0, 0), at(10, 0), at(10, 10)];
    expect(rounded(asideOf(line, 1, 2))[2]).toEqual([9, 1]);
    expect(rounded(asideOf(line, -1, 2))[2]).toEqual([11, -1]);
  });

  it('keeps a part beside the line, however short that is', () => {
    expect(rounded(asideOf([at(0, 0), at(1, 0)], 0.5, 2))).toEqual([
      [0, 0],
      [0.3, 0.5],
      [0.7, 0.5],
      [1, 0],
    ]);
  });

  it('does not run far out where the line turns back', () => {
    const [, , corner] = asideOf([at(0, 0), at(10, 0), at(0, 0.1)], 1, 2);
    expect(distance(corner ?? at(0, 0), at(10, 0))).toBeLessThan(2);
  });

  it('is a number at every point of any line, also where points lie in one place', () => {
    fc.assert(
      fc.property(
        polylineArbitrary,
        pointArbitrary,
        fc.double({ min: -2, max: 2, noNaN: true }),
        (line, point, byM) => {
          const aside = asideOf([...line, ...line.slice(-1), point], byM, 0.2);
          expect(aside.every(({ xM, yM }) => Number.isFinite(xM) && Number.isFinite(yM))).toBe(true);
          expect(aside[0]).toEqual(line[0]);
          expect(aside.at(-1)).toEqual(point);
          expect(aside).toHaveLength(line.length + 4);
        },
      ),
    );
  });

  it('lies as far from a straight line as it is told', () => {
    fc.assert(
      fc.property(pointArbitrary, pointArbitrary, fc.double({ min: -2, max: 2, noNaN: true }), (a, b, byM) => {
        fc.pre(distance(a, b) > 0.01);
        const [, one, other] = asideOf([a, b], byM, 0.2);
        for (const point of [one, other]) expect(distanceToSegment(a, b, point ?? a)).toBeCloseTo(Math.abs(byM), 6);
      }),
    );
  });
});

describe('a place beside a line', () => {
  it('is to the right of the piece it lies on', () => {
    const line = [at(0, 0), at(10, 0), at(10, 10)];
    expect(rounded([besideAt(line, at(4, 0), 1), besideAt(line, at(10, 6), 1)])).toEqual([
      [4, 1],
      [9, 6],
    ]);
  });
});
