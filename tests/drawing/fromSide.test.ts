/** The side of a vehicle, whatever its measures: inside its box, on its wheels, and never across itself. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawOutline } from '../../src/drawing/outline.ts';
import type { Shape } from '../../src/drawing/shapes.ts';
import { fromSide, sideEdge } from '../../src/drawing/vehicle/fromSide.ts';
import { polygonHolds } from '../../src/geom/polygon.ts';
import { newSheet } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { crossesItself } from '../../src/plan/ownOutline.ts';
import type { Body, OutlineOf, Point } from '../../src/plan/schema.ts';

type Vehicle = OutlineOf<'vehicle'>;

const BODIES: readonly Body[] = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'];
const HAIR = 1e-9;

const cm = (minM: number, maxM: number) =>
  fc.integer({ min: Math.round(minM * 100), max: Math.round(maxM * 100) }).map((n) => n / 100);

/** All that a plan may hold, whether it goes together or not; the bounds are the document's. */
const anyVehicle = (body: Body): fc.Arbitrary<Vehicle> =>
  fc.record({
    ...{ kind: fc.constant('vehicle' as const), body: fc.constant(body) },
    ...{ lengthM: cm(2, 12), widthM: cm(1, 3), heightM: cm(0.5, 4), sillM: cm(0.02, 0.5) },
    ...{ frontAxleM: cm(0.1, 4), wheelbaseM: cm(0.3, 10), bayM: cm(0.3, 3), cabM: cm(0.5, 8) },
  });
/** Measures that a tape could have brought: each near that of its kind. */
const likely = (body: Body): fc.Arbitrary<Vehicle> => {
  const of = DEFAULT_OUTLINES[body];
  const near = (m: number) => fc.integer({ min: 95, max: 105 }).map((percent) => (m * percent) / 100);
  return fc
    .record({
      ...{ kind: fc.constant('vehicle' as const), body: fc.constant(body), sillM: fc.constant(of.sillM) },
      ...{
        behindM: near(of.lengthM - of.frontAxleM - of.wheelbaseM),
        widthM: near(of.widthM),
        heightM: near(of.heightM),
      },
      ...{ frontAxleM: near(of.frontAxleM), wheelbaseM: near(of.wheelbaseM), bayM: near(of.bayM), cabM: near(of.cabM) },
    })
    .map(({ behindM, ...rest }) => ({ ...rest, lengthM: rest.frontAxleM + rest.wheelbaseM + behindM }));
};

const spots = (flat: readonly number[]): Point[] =>
  Array.from({ length: flat.length / 2 }, (_, i) => ({
    xM: flat[2 * i] ?? Number.NaN,
    yM: flat[2 * i + 1] ?? Number.NaN,
  }));
const wheelsOf = (shapes: readonly Shape[]) =>
  shapes
    .filter((shape) => shape.kind === 'circle')
    .filter(({ fill, stroke }) => fill === 'rule' && stroke?.widthPx === 2);
const panesOf = (shapes: readonly Shape[]) =>
  shapes
    .filter((shape) => shape.kind === 'line')
    .filter(({ fill }) => fill === 'gridFine')
    .map(({ points }) => spots(points));

/** How high the body is at x, m from the road: the highest crossing of its edge with an upright there. */
function heightAt(vehicle: Vehicle, xM: number): number {
  const edge = spots(sideEdge(vehicle));
  const ys = edge.flatMap((a, i) => {
    const b = edge[(i + 1) % edge.length] ?? a;
    return a.xM <= xM === b.xM <= xM ? [] : [a.yM + ((xM - a.xM) / (b.xM - a.xM)) * (b.yM - a.yM)];
  });
  return vehicle.heightM - Math.min(...ys);
}

describe.each(BODIES)('%s, whatever its measures', (body) => {
  it('lies inside its box, all of it', () => {
    fc.assert(
      fc.property(anyVehicle(body), (vehicle) => {
        const outside = fromSide(vehicle).flatMap((shape) => {
          const [r, at] = shape.kind === 'circle' ? [shape.radius, [shape.x, shape.y]] : [0, shape.points];
          return spots(at).filter(
            ({ xM, yM }) =>
              !(
                xM - r >= -HAIR &&
                xM + r <= vehicle.lengthM + HAIR &&
                yM - r >= -HAIR &&
                yM + r <= vehicle.heightM + HAIR
              ),
          );
        });
        expect(outside).toEqual([]);
      }),
    );
  });

  it('fills its box: nose, tail and roof reach it', () => {
    fc.assert(
      fc.property(anyVehicle(body), (vehicle) => {
        const edge = spots(sideEdge(vehicle));
        const [xs, ys] = [edge.map(({ xM }) => xM), edge.map(({ yM }) => yM)];
        expect(Math.min(...xs)).toBeLessThan(0.03);
        expect(Math.max(...xs)).toBeGreaterThan(vehicle.lengthM - 0.03);
        expect(Math.min(...ys)).toBeLessThan(0.06 * vehicle.heightM);
      }),
    );
  });

  it('stands on two wheels that touch the road and not one another, each in its arch', () => {
    fc.assert(
      fc.property(anyVehicle(body), (vehicle) => {
        const wheels = wheelsOf(fromSide(vehicle));
        expect(wheels).toHaveLength(2);
        const [front, rear] = wheels;
        if (front === undefined || rear === undefined) return;
        for (const { y, radius } of wheels) expect(y + radius).toBeCloseTo(vehicle.heightM, 9);
        expect(rear.x - front.x).toBeGreaterThan(front.radius + rear.radius);
        // no point of the body's edge lies on the wheel
        const onWheel = spots(sideEdge(vehicle)).filter(({ xM, yM }) =>
          wheels.some(({ x, y, radius }) => Math.hypot(xM - x, yM - y) <= radius),
        );
        expect(onWheel).toEqual([]);
      }),
    );
  });

  it('has an edge that never crosses itself', () => {
    fc.assert(
      fc.property(anyVehicle(body), (vehicle) => {
        expect(crossesItself(spots(sideEdge(vehicle)))).toBe(false);
      }),
    );
  });

  it('has its windows inside the body, none across itself or another', () => {
    fc.assert(
      fc.property(anyVehicle(body), (vehicle) => {
        const edge = spots(sideEdge(vehicle));
        const panes = panesOf(fromSide(vehicle));
        expect(panes.filter(crossesItself)).toEqual([]);
        expect(panes.flat().filter((spot) => !polygonHolds(edge, spot))).toEqual([]);
        const onNext = panes.flatMap((pane, i) => (panes[i - 1] ?? []).filter((spot) => polygonHolds(pane, spot)));
        expect(onNext).toEqual([]);
      }),
    );
  });

  it('keeps the measures that it was told, where they go together', () => {
    fc.assert(
      fc.property(likely(body), (vehicle) => {
        const { frontAxleM, wheelbaseM, bayM } = vehicle;
        const shapes = fromSide(vehicle);
        expect(wheelsOf(shapes).map(({ x }) => x)).toEqual([
          expect.closeTo(frontAxleM, 9),
          expect.closeTo(frontAxleM + wheelbaseM, 9),
        ]);
        const walls = shapes
          .filter((shape) => shape.kind === 'line')
          .filter(({ stroke }) => stroke?.colour === 'ruleStrong');
        expect(walls.map(({ points }) => [points[0], points[2]])).toEqual([[bayM, bayM]]);
        expect(panesOf(shapes).length).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});

describe('each kind is known by its side', () => {
  it.each(BODIES)('%s: the hood is lower than the roof, the roof as high as told', (body) => {
    fc.assert(
      fc.property(likely(body), (vehicle) => {
        const { heightM, bayM, cabM } = vehicle;
        expect(heightAt(vehicle, bayM * 0.4)).toBeLessThan(0.65 * heightM);
        expect(heightAt(vehicle, bayM + 0.6 * cabM)).toBeGreaterThan(0.93 * heightM);
      }),
    );
  });

  /** Height over the load, as shares of the vehicle's: right behind the cabin, in the middle, and near the tail. */
  const overLoad = (vehicle: Vehicle) => {
    const backXM = vehicle.bayM + vehicle.cabM;
    const roomM = vehicle.lengthM - backXM;
    return [0.08, 0.5, 0.85].map((share) => heightAt(vehicle, backXM + share * roomM) / vehicle.heightM);
  };
  const LOADS: readonly (readonly [Body, readonly (readonly [least: number, most: number])[]])[] = [
    [
      'hatchback',
      [
        [0.9, 1],
        [0.8, 1],
        [0.5, 0.87],
      ],
    ],
    [
      'saloon',
      [
        [0.7, 0.95],
        [0.6, 0.75],
        [0.55, 0.72],
      ],
    ],
    [
      'estate',
      [
        [0.9, 1],
        [0.9, 1],
        [0.65, 0.95],
      ],
    ],
    [
      'pickup',
      [
        [0.5, 0.75],
        [0.55, 0.65],
        [0.55, 0.65],
      ],
    ],
    [
      'panelVan',
      [
        [0.95, 1],
        [0.95, 1],
        [0.95, 1],
      ],
    ],
    [
      'smallBus',
      [
        [0.95, 1],
        [0.95, 1],
        [0.7, 1],
      ],
    ],
  ];
  it.each(LOADS)('%s: as high over its load as its kind', (body, ranges) => {
    fc.assert(
      fc.property(likely(body), (vehicle) => {
        for (const [i, share] of overLoad(vehicle).entries()) {
          const [least, most] = ranges[i] ?? [1, 0];
          expect([i, share]).toEqual([i, Math.min(Math.max(share, least), most)]);
        }
      }),
    );
  });

  it('has the windows of its kind: one at the van, two at the cars and the pickup, three at the estate, four at the bus', () => {
    const windows = BODIES.map((body) => panesOf(fromSide(DEFAULT_OUTLINES[body])).length);
    expect(windows).toEqual([2, 2, 3, 2, 1, 4]);
  });

  it('has wheels of real size', () => {
    for (const body of BODIES) {
      const [wheel] = wheelsOf(drawOutline(sheetOf(body)).shapes);
      expect(wheel?.radius).toBeGreaterThan(0.28);
      expect(wheel?.radius).toBeLessThan(0.4);
    }
  });
  const sheetOf = (body: Body) =>
    newSheet({ id: 's', name: '', outline: DEFAULT_OUTLINES[body], mirrored: false, view: 'side' });
});
