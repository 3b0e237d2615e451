/** Usual places hold on every outline that a plan may have: drawn by its measures, on a board, or by the user. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/geom/point.ts';
import { newPlan } from '../../src/plan/create.ts';
import { openPlan } from '../../src/plan/open.ts';
import { type BatteryPlace, usualPlaces } from '../../src/plan/outlinePlaces.ts';
import { ownFault, ownFrom } from '../../src/plan/ownOutline.ts';
import { withProposal } from '../../src/plan/propose/proposal.ts';
import { proposeFeed } from '../../src/plan/propose/propose.ts';
import { roundM } from '../../src/plan/round.ts';
import { savePlan } from '../../src/plan/save.ts';
import { type Body, type Outline, type OutlineOf, outlineSchema, type Point } from '../../src/plan/schema.ts';
import { withUsualStart } from '../../src/plan/usualStart.ts';

const BODIES: readonly Body[] = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'];
const PLACES: readonly BatteryPlace[] = ['front', 'seat', 'rear'];
const MOST_AMPLIFIERS = 8;

const lengthM = (min: number, max: number) =>
  fc.oneof(
    { weight: 1, arbitrary: fc.constantFrom(min, max) },
    { weight: 4, arbitrary: fc.double({ min, max, noNaN: true }).map(roundM) },
  );

const vehicle: fc.Arbitrary<OutlineOf<'vehicle'>> = fc.record({
  kind: fc.constant('vehicle'),
  body: fc.constantFrom(...BODIES),
  lengthM: lengthM(2, 12),
  widthM: lengthM(1, 3),
  heightM: lengthM(0.5, 4),
  frontAxleM: lengthM(0.1, 4),
  wheelbaseM: lengthM(0.3, 10),
  bayM: lengthM(0.3, 3),
  cabM: lengthM(0.5, 8),
  sillM: lengthM(0.02, 0.5),
});
const bench: fc.Arbitrary<OutlineOf<'bench'>> = fc.record({
  kind: fc.constant('bench'),
  lengthM: lengthM(0.5, 12),
  widthM: lengthM(0.3, 5),
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
type Shares = readonly (readonly [x: number, y: number])[];
/** A nose narrower than the rest, an L, and any star about the middle: edges that leave much of their rectangle out. */
const shares: fc.Arbitrary<Shares> = fc.oneof(
  fc.tuple(share, share).map(([x, y]): Shares => {
    const nose = 0.05 + 0.4 * y;
    return [
      [0, nose],
      [0.1 + 0.8 * x, 0],
      [1, 0],
      [1, 1],
      [0.1 + 0.8 * x, 1],
      [0, 1 - nose],
    ];
  }),
  fc.tuple(share, share, fc.boolean()).map(([x, y, isRear]): Shares => {
    const [across, along] = [0.1 + 0.8 * y, 0.1 + 0.8 * x];
    const edge: Shares = [
      [0, 0],
      [1, 0],
      [1, across],
      [along, across],
      [along, 1],
      [0, 1],
    ];
    return isRear ? edge.map(([a, b]) => [1 - a, b]) : edge;
  }),
  fc.array(fc.double({ min: 0.15, max: 0.5, noNaN: true }), { minLength: 3, maxLength: 9 }).map(
    (radii): Shares =>
      radii.map((radius, index) => {
        const angle = (2 * Math.PI * index) / radii.length;
        return [0.5 + radius * Math.cos(angle), 0.5 + radius * Math.sin(angle)];
      }),
  ),
);
const own: fc.Arbitrary<OutlineOf<'own'>> = fc
  .record({
    ...{ lengthM: lengthM(0.5, 12), widthM: lengthM(0.3, 5), heightM: lengthM(0.3, 4) },
    bayM: fc.option(lengthM(0.1, 11)),
    cabM: fc.option(lengthM(0.1, 11)),
    shares,
  })
  .map(({ shares: corners, ...sizes }) => ({
    kind: 'own' as const,
    ...sizes,
    edge: corners.map(([x, y]): Point => ({ xM: roundM(x * sizes.lengthM), yM: roundM(y * sizes.widthM) })),
  }))
  .filter((outline) => ownFault(outline) !== 'crosses');

const asked = fc.record({
  outline: fc.oneof<fc.Arbitrary<Outline>[]>(vehicle, bench, own),
  mirrored: fc.boolean(),
  battery: fc.constantFrom(...PLACES),
  amplifiers: fc.integer({ min: 1, max: MOST_AMPLIFIERS }),
});

/** Inside by the winding of the edge round the place, worked out apart from what places things. */
function isInside(outline: Outline, { xM, yM }: Point): boolean {
  const corners = ownFrom(outline).edge;
  let turns = 0;
  for (const [index, a] of corners.entries()) {
    const b = corners[(index + 1) % corners.length] ?? a;
    const [ax, ay, bx, by] = [a.xM - xM, a.yM - yM, b.xM - xM, b.yM - yM];
    turns += Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / (2 * Math.PI);
  }
  return Math.abs(turns) > 0.5;
}

const zoneBounds = (outline: Outline): number[] => {
  if (outline.kind === 'bench' || outline.bayM === null) return [];
  return outline.cabM === null ? [outline.bayM] : [outline.bayM, outline.bayM + outline.cabM];
};
/** A line between two zones lies between the two places. */
const isParted = (outline: Outline, a: Point, b: Point): boolean =>
  zoneBounds(outline).some((xM) => a.xM > xM !== b.xM > xM);

const nearestM = (places: readonly Point[]): number =>
  Math.min(...places.flatMap((one, index) => places.slice(index + 1).map((other) => distance(one, other))));

function areaM2(outline: Outline): number {
  const corners = ownFrom(outline).edge;
  const twice = corners.map((a, index) => {
    const b = corners[(index + 1) % corners.length] ?? a;
    return a.xM * b.yM - b.xM * a.yM;
  });
  return Math.abs(twice.reduce((sum, part) => sum + part, 0)) / 2;
}

const IS_LONG = process.env.FEEDRUN_LONG === '1';
const RUNS = { numRuns: IS_LONG ? 300 : 80, seed: 20260731 };

describe('usual places', () => {
  it('all lie inside the outline', () => {
    fc.assert(
      fc.property(asked, ({ outline, mirrored, battery, amplifiers }) => {
        expect(v.is(outlineSchema, outline)).toBe(true);
        const places = usualPlaces(outline, mirrored, battery, amplifiers);
        expect(places.amplifiers).toHaveLength(amplifiers);
        expect(places.grounds).toHaveLength(amplifiers);
        const { passThrough, jumpPost } = places;
        const spots = [places.battery, places.mainFuse, places.block, ...places.amplifiers, ...places.grounds];
        for (const spot of [...spots, passThrough, jumpPost]) {
          if (spot !== null) expect([spot, isInside(outline, spot)]).toEqual([spot, true]);
        }
        for (const yM of Object.values(places.sills)) expect(yM > 0 && yM < outline.widthM).toBe(true);
      }),
      RUNS,
    );
  });

  it('keep the fuse within 0.3 m of the source, on its side of the firewall', () => {
    fc.assert(
      fc.property(asked, ({ outline, mirrored, battery }) => {
        const { battery: source, mainFuse } = usualPlaces(outline, mirrored, battery);
        expect(distance(source, mainFuse)).toBeLessThanOrEqual(0.3);
        expect(isParted(outline, source, mainFuse)).toBe(false);
      }),
      RUNS,
    );
  });

  it('never put two fittings on one spot', () => {
    fc.assert(
      fc.property(asked, ({ outline, mirrored, battery, amplifiers }) => {
        const places = usualPlaces(outline, mirrored, battery, amplifiers);
        const spots = [places.battery, places.mainFuse, places.block, ...places.amplifiers, ...places.grounds];
        // the smallest board, 50 cm by 30 cm, has room for 1 cm between any two; a sliver only for apart at all
        const leastM = areaM2(outline) >= 0.15 ? 0.01 : 0.001;
        expect(nearestM(spots)).toBeGreaterThanOrEqual(leastM);
      }),
      RUNS,
    );
  });
});

describe('a usual start', () => {
  it('opens again as it was, and a feed can be proposed for it', () => {
    fc.assert(
      fc.property(asked, fc.boolean(), ({ outline, mirrored, battery, amplifiers }, hasBattery) => {
        let next = 0;
        const newId = () => `new${next++}`;
        const empty = newPlan({ id: 'p', name: 'P', sheetId: 's', outline, mirrored });
        const amplifiersW = Array.from({ length: amplifiers }, (_, index) => 300 + 100 * index);
        const start = { battery: hasBattery ? battery : null, amplifiersW };
        const plan = withUsualStart(empty, start, (kind) => kind, newId);
        expect(plan.fittings.length).toBe(amplifiers + (hasBattery ? 1 : 0));
        expect(openPlan(savePlan(plan))).toEqual({ ok: true, plan, migratedFrom: null });

        const proposal = proposeFeed(plan, 's', { fitting: (kind) => kind }, newId);
        expect(proposal.length > 0).toBe(hasBattery);
        const whole = withProposal(plan, proposal);
        expect(openPlan(savePlan(whole))).toEqual({ ok: true, plan: whole, migratedFrom: null });
      }),
      { ...RUNS, numRuns: IS_LONG ? 100 : 25 },
    );
  });
});
