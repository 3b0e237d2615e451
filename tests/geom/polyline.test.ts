import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, distance, distanceToSegment, shareAlongSegment } from '../../src/geom/point.ts';
import { nearestOnPolyline, pointAlong, polylineLength, splitPolyline } from '../../src/geom/polyline.ts';
import { at, pointArbitrary, polylineArbitrary } from './points.ts';

describe('points', () => {
  it('a 3-4-5 triangle has a side of 5', () => {
    expect(distance(at(0, 0), at(3, 4))).toBe(5);
  });

  it('halfway from (0, 0) to (2, 4) is (1, 2)', () => {
    expect(between(at(0, 0), at(2, 4), 0.5)).toEqual(at(1, 2));
  });

  it('the share along a segment stays between its ends', () => {
    expect(shareAlongSegment(at(0, 0), at(4, 0), at(1, 7))).toBe(0.25);
    expect(shareAlongSegment(at(0, 0), at(4, 0), at(-3, 1))).toBe(0);
    expect(shareAlongSegment(at(0, 0), at(4, 0), at(9, 1))).toBe(1);
    expect(shareAlongSegment(at(2, 2), at(2, 2), at(9, 1))).toBe(0);
  });

  it('beyond the end of a segment the distance is to its end', () => {
    expect(distanceToSegment(at(0, 0), at(2, 0), at(1, 1))).toBe(1);
    expect(distanceToSegment(at(0, 0), at(2, 0), at(5, 4))).toBe(5);
  });
});

describe('polylineLength', () => {
  it('adds its segments: 3 and 4 are 7', () => {
    expect(polylineLength([at(0, 0), at(3, 0), at(3, 4)])).toBe(7);
  });

  it('is 0 for no point and for one', () => {
    expect(polylineLength([])).toBe(0);
    expect(polylineLength([at(1, 1)])).toBe(0);
  });

  it('is never shorter than the straight way, and the same backwards', () => {
    fc.assert(
      fc.property(polylineArbitrary, (points) => {
        const [first, last] = [points[0] ?? at(0, 0), points.at(-1) ?? at(0, 0)];
        expect(polylineLength(points)).toBeGreaterThanOrEqual(distance(first, last) - 1e-9);
        expect(polylineLength(points.toReversed())).toBeCloseTo(polylineLength(points), 9);
      }),
    );
  });
});

describe('nearestOnPolyline', () => {
  const bent = [at(0, 0), at(4, 0), at(4, 3)];

  it('drops the perpendicular onto the nearest segment', () => {
    expect(nearestOnPolyline(bent, at(1, 2))).toEqual({ point: at(1, 0), segment: 0, distanceM: 2, alongM: 1 });
    expect(nearestOnPolyline(bent, at(6, 2))).toEqual({ point: at(4, 2), segment: 1, distanceM: 2, alongM: 6 });
  });

  it('holds the ends', () => {
    expect(nearestOnPolyline(bent, at(-3, 4))).toEqual({ point: at(0, 0), segment: 0, distanceM: 5, alongM: 0 });
    expect(nearestOnPolyline(bent, at(4, 9))).toEqual({ point: at(4, 3), segment: 1, distanceM: 6, alongM: 7 });
  });

  it('knows a single point, and that no points have none', () => {
    expect(nearestOnPolyline([at(1, 1)], at(1, 3))).toEqual({ point: at(1, 1), segment: 0, distanceM: 2, alongM: 0 });
    expect(nearestOnPolyline([], at(0, 0))).toBeNull();
  });

  it('is no farther than any point of the polyline', () => {
    fc.assert(
      fc.property(polylineArbitrary, pointArbitrary, fc.double({ min: 0, max: 1, noNaN: true }), (points, p, share) => {
        const any = pointAlong(points, share * polylineLength(points));
        const nearest = nearestOnPolyline(points, p);
        expect(nearest?.distanceM).toBeLessThanOrEqual(distance(any?.point ?? at(0, 0), p) + 1e-9);
      }),
    );
  });
});

describe('pointAlong and splitPolyline', () => {
  const bent = [at(0, 0), at(3, 0), at(3, 4)];

  it('5 m along 3 m and 4 m is 2 m into the second', () => {
    expect(pointAlong(bent, 5)).toEqual({ point: at(3, 2), segment: 1 });
  });

  it('holds the ends', () => {
    expect(pointAlong(bent, -1)).toEqual({ point: at(0, 0), segment: 0 });
    expect(pointAlong(bent, 99)).toEqual({ point: at(3, 4), segment: 1 });
    expect(pointAlong([], 1)).toBeNull();
  });

  it('cuts one line into two that share the point', () => {
    expect(splitPolyline(bent, 0, at(1, 0))).toEqual({
      before: [at(0, 0), at(1, 0)],
      after: [at(1, 0), at(3, 0), at(3, 4)],
    });
  });

  it('loses no length, wherever it cuts', () => {
    fc.assert(
      fc.property(polylineArbitrary, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const lengthM = polylineLength(points);
        const cut = pointAlong(points, share * lengthM);
        const { before, after } = splitPolyline(points, cut?.segment ?? 0, cut?.point ?? at(0, 0));
        expect(polylineLength(before)).toBeCloseTo(share * lengthM, 6);
        expect(polylineLength(before) + polylineLength(after)).toBeCloseTo(lengthM, 6);
      }),
    );
  });
});
