import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, distanceToSegment } from '../../src/geom/point.ts';
import { nearestOnPolyline } from '../../src/geom/polyline.ts';
import { simplify } from '../../src/geom/simplify.ts';
import { snapAngle, snapToGrid } from '../../src/geom/snap.ts';
import { at, pointArbitrary, polylineArbitrary } from './points.ts';

describe('snapToGrid', () => {
  it('takes the nearest crossing', () => {
    const snapped = snapToGrid(at(0.13, 0.27), 0.05);
    expect(snapped.xM).toBeCloseTo(0.15, 12);
    expect(snapped.yM).toBeCloseTo(0.25, 12);
  });

  it('moves nothing without a step', () => {
    expect(snapToGrid(at(0.13, 0.27), 0)).toEqual(at(0.13, 0.27));
  });

  it('never moves a point by more than half a diagonal', () => {
    fc.assert(
      fc.property(pointArbitrary, fc.double({ min: 0.01, max: 1, noNaN: true }), (p, stepM) => {
        expect(distance(p, snapToGrid(p, stepM))).toBeLessThanOrEqual(stepM * Math.SQRT1_2 + 1e-9);
      }),
    );
  });
});

describe('snapAngle', () => {
  it('makes a nearly level line level, and keeps the point beside the finger', () => {
    const snapped = snapAngle(at(0, 0), at(1, 0.05));
    expect(snapped.xM).toBeCloseTo(1, 12);
    expect(snapped.yM).toBeCloseTo(0, 12);
  });

  it('finds 45 degrees, in every quarter', () => {
    for (const [xM, yM] of [
      [1, 0.98],
      [-1, 0.98],
      [-1, -0.98],
      [1, -0.98],
    ] as const) {
      const snapped = snapAngle(at(2, 3), at(2 + xM, 3 + yM));
      expect(Math.abs(snapped.xM - 2)).toBeCloseTo(0.99, 9);
      expect(Math.abs(snapped.yM - 3)).toBeCloseTo(0.99, 9);
    }
  });

  it('leaves the start itself alone', () => {
    expect(snapAngle(at(2, 3), at(2, 3))).toEqual(at(2, 3));
  });

  it('never moves a point by more than the sine of half a step', () => {
    fc.assert(
      fc.property(pointArbitrary, pointArbitrary, (from, p) => {
        const most = distance(from, p) * Math.sin((7.5 * Math.PI) / 180);
        expect(distance(p, snapAngle(from, p))).toBeLessThanOrEqual(most + 1e-9);
      }),
    );
  });
});

describe('simplify', () => {
  it('leaves out a point that hardly strays, and keeps one that does', () => {
    expect(simplify([at(0, 0), at(1, 0.001), at(2, 0)], 0.01)).toEqual([at(0, 0), at(2, 0)]);
    expect(simplify([at(0, 0), at(1, 0.5), at(2, 0)], 0.01)).toEqual([at(0, 0), at(1, 0.5), at(2, 0)]);
  });

  it('keeps the corners of a hand-drawn right angle', () => {
    const drawn = Array.from({ length: 201 }, (_, step) =>
      step <= 100 ? at(step / 100, 0) : at(1, (step - 100) / 100),
    );
    expect(simplify(drawn, 0.005)).toEqual([at(0, 0), at(1, 0), at(1, 1)]);
  });

  it('keeps one point and none', () => {
    expect(simplify([at(1, 2)], 0.1)).toEqual([at(1, 2)]);
    expect(simplify([], 0.1)).toEqual([]);
  });

  it('strays nowhere farther than the tolerance', () => {
    fc.assert(
      fc.property(polylineArbitrary, fc.double({ min: 0.001, max: 10, noNaN: true }), (points, toleranceM) => {
        const simple = simplify(points, toleranceM);
        expect(simple[0]).toEqual(points[0]);
        expect(simple.at(-1)).toEqual(points.at(-1));
        for (const point of points) {
          expect(nearestOnPolyline(simple, point)?.distanceM).toBeLessThanOrEqual(toleranceM + 1e-9);
        }
      }),
    );
  });

  it('takes a line of 50,000 points without exhausting the stack', () => {
    // a parabola: every point matters, which is the deepest case for a recursive form
    const long = Array.from({ length: 50_000 }, (_, step) => at(step / 1000, (step / 1000) ** 2 / 50));
    const simple = simplify(long, 0.01);
    expect(simple.length).toBeGreaterThan(10);
    expect(simple.length).toBeLessThan(500);
    expect(distanceToSegment(simple[0] ?? at(0, 0), simple[1] ?? at(0, 0), long[10] ?? at(0, 0))).toBeLessThan(0.01);
  });
});
