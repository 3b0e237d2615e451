import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawSheet } from '../../src/drawing/draw.ts';
import { pointsOfFlat } from '../../src/drawing/runs.ts';
import type { Drawing, RunShape } from '../../src/drawing/shapes.ts';
import { sideBySide } from '../../src/drawing/sideBySide.ts';
import { between } from '../../src/geom/point.ts';
import { nearestOnPolyline, pointAlong, polylineLength, segmentsOf } from '../../src/geom/polyline.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { splitRun } from '../../src/plan/edits/splitRun.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { placeOn, runPoints } from '../../src/plan/runs.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan, Point } from '../../src/plan/schema.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';
import { words } from './support/labelWords.ts';
import { emptyPlan, feedPlan, SHEET, withFittings, withRun } from './support/plans.ts';

/** At 100 px/m a lane is 22 cm wide, and half a plate 11 cm. */
const PX_PER_M = 100;

function seen(plan: Plan, pxPerM = PX_PER_M, answer = answerWith()): Drawing {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  return sideBySide(plan, drawSheet(plan, sheet, answer, words), pxPerM);
}

const rounded = (flat: readonly number[]): number[] => flat.map((value) => Number(value.toFixed(6)) + 0);
const lineIn = (drawing: Drawing, id: string): number[] =>
  rounded(drawing.runs.find(({ runId }) => runId === id)?.points ?? []);

/** A battery and a block 2 m apart along y = 1. */
const pair = () =>
  withFittings(emptyPlan(), [
    ['battery', 'battery', 1, 1],
    ['block', 'block', 3, 1],
  ]);
const two = () =>
  withRun(withRun(pair(), 'one', 'battery.positive', 'block.bus'), 'other', 'battery.positive', 'block.bus');

describe('runs between the same two fittings', () => {
  it('are drawn on either side of the line they share, and come out of the same plates', () => {
    const drawing = seen(two());
    expect(lineIn(drawing, 'one')).toEqual([1, 1, 1.11, 0.89, 2.89, 0.89, 3, 1]);
    expect(lineIn(drawing, 'other')).toEqual([1, 1, 1.11, 1.11, 2.89, 1.11, 3, 1]);
  });

  it('are as far apart on the screen from near and from afar', () => {
    for (const pxPerM of [30, 100, 400, 1500]) {
      const { runs } = seen(two(), pxPerM);
      const [one, other] = runs.map(({ points }) => points[3] ?? 0);
      expect(((other ?? 0) - (one ?? 0)) * pxPerM).toBeCloseTo(22, 6);
    }
  });

  it('lie in the middle and on either side when they are three', () => {
    const drawing = seen(withRun(two(), 'third', 'battery.positive', 'block.bus'));
    expect([lineIn(drawing, 'one')[3], lineIn(drawing, 'other')[3], lineIn(drawing, 'third')[3]]).toEqual([
      0.78, 1, 1.22,
    ]);
  });

  it('lie on either side also when one was drawn the other way', () => {
    const turned = withRun(
      withRun(pair(), 'one', 'battery.positive', 'block.bus'),
      'other',
      'block.bus',
      'battery.positive',
    );
    expect(lineIn(seen(turned), 'one')).toEqual([1, 1, 1.11, 0.89, 2.89, 0.89, 3, 1]);
    expect(lineIn(seen(turned), 'other')).toEqual([3, 1, 2.89, 1.11, 1.11, 1.11, 1, 1]);
  });

  it('lie beside each other round the bends they share', () => {
    const bends = [[2, 1] as const, [2, 2] as const, [3, 2] as const];
    const one = withRun(pair(), 'one', 'battery.positive', 'block.bus', bends);
    const drawing = seen(withRun(one, 'other', 'block.bus', 'battery.positive', bends.toReversed()));
    // right, down, right and up: to the left of that way, and to the right of it
    expect(lineIn(drawing, 'one')).toEqual([1, 1, 1.11, 0.89, 2.11, 0.89, 2.11, 1.89, 2.89, 1.89, 2.89, 1.11, 3, 1]);
    expect(lineIn(drawing, 'other')).toEqual([3, 1, 3.11, 1.11, 3.11, 2.11, 1.89, 2.11, 1.89, 1.11, 1.11, 1.11, 1, 1]);
  });

  it('are one line too where a bend of one lies on it', () => {
    const plan = withRun(
      withRun(pair(), 'one', 'battery.positive', 'block.bus'),
      'other',
      'battery.positive',
      'block.bus',
      [[1.7, 1]],
    );
    expect(lineIn(seen(plan), 'one')[3]).toBe(0.89);
    expect(lineIn(seen(plan), 'other')).toEqual([1, 1, 1.11, 1.11, 1.7, 1.11, 2.89, 1.11, 3, 1]);
  });

  it('are drawn along their own lines as soon as one is bent away', () => {
    const plan = withRun(
      withRun(pair(), 'one', 'battery.positive', 'block.bus'),
      'other',
      'battery.positive',
      'block.bus',
      [[2, 1.4]],
    );
    expect(lineIn(seen(plan), 'one')).toEqual([1, 1, 3, 1]);
    expect(lineIn(seen(plan), 'other')).toEqual([1, 1, 2, 1.4, 3, 1]);
  });

  it('go with the fitting that is moved', () => {
    const moved = seen(moveFitting(two(), 'block', { xM: 1, yM: 3 }));
    expect(lineIn(moved, 'one')).toEqual([1, 1, 1.11, 1.11, 1.11, 2.89, 1, 3]);
    expect(lineIn(moved, 'other')).toEqual([1, 1, 0.89, 1.11, 0.89, 2.89, 1, 3]);
  });

  it('are only drawn so: the plan is the same, to the byte', () => {
    const plan = two();
    const before = savePlan(plan);
    seen(plan);
    expect(savePlan(plan)).toBe(before);
    expect(runPoints(plan, plan.runs[0] ?? raise())).toEqual([
      { xM: 1, yM: 1 },
      { xM: 3, yM: 1 },
    ]);
  });
});

describe('a cable that something sits in', () => {
  const fuse = (id: string) =>
    newFittingIn(emptyPlan(), 'fuse', { id, name: id, sheetId: SHEET, at: { xM: 0, yM: 0 } });
  /** Into that run, there. */
  const fused = (plan: Plan, runId: string, xM: number) =>
    splitRun(plan, runId, { xM, yM: 1 }, fuse(`${runId}Fuse`), `${runId}On`);

  it('keeps its lane on either side of it, and the other cable passes beside', () => {
    const drawing = seen(fused(two(), 'one', 2));
    expect(lineIn(drawing, 'one')).toEqual([1, 1, 1.11, 0.89, 1.89, 0.89, 2, 1]);
    expect(lineIn(drawing, 'oneOn')).toEqual([2, 1, 2.11, 0.89, 2.89, 0.89, 3, 1]);
    expect(lineIn(drawing, 'other')).toEqual([1, 1, 1.11, 1.11, 2.89, 1.11, 3, 1]);
  });

  it('keeps its lane when the other has a fuse too', () => {
    const drawing = seen(fused(fused(two(), 'one', 1.5), 'other', 2.5));
    expect(['one', 'oneOn'].map((id) => lineIn(drawing, id)[3])).toEqual([0.89, 0.89]);
    expect(['other', 'otherOn'].map((id) => lineIn(drawing, id)[3])).toEqual([1.11, 1.11]);
  });

  it('keeps its lane when a part of it was drawn the other way', () => {
    const plan = withRun(
      withRun(
        withRun(withFittings(pair(), [['fuse', 'fuse', 2, 1]]), 'one', 'fuse.in', 'battery.positive'),
        'on',
        'fuse.out',
        'block.bus',
      ),
      'other',
      'battery.positive',
      'block.bus',
    );
    const drawing = seen(plan);
    // the first run is the one to the left as it was drawn: towards the battery
    expect(['one', 'on', 'other'].map((id) => lineIn(drawing, id)[3])).toEqual([1.11, 1.11, 0.89]);
  });

  it('keeps clear of the other, whatever fuses sit in either', () => {
    // each at a tenth of the way of its own
    const anyFuses = fc.array(
      fc.record({ in: fc.constantFrom('one', 'other'), tenth: fc.integer({ min: 1, max: 19 }) }),
      {
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(anyFuses, fc.integer({ min: 60, max: 1000 }), (fuses, pxPerM) => {
        const places = new Map(fuses.map((one) => [one.tenth, one]));
        const cableOf = new Map<string, string>(
          [...places.values()].flatMap((one, index) => [[`on${index}`, one.in] as const]),
        );
        // from far to near, so that what is left of the first run is what is cut next
        const plan = [...places.values()]
          .map((one, index) => ({ ...one, index }))
          .toSorted((one, other) => other.tenth - one.tenth)
          .reduce(
            (cut, one) =>
              splitRun(cut, one.in, { xM: 1 + one.tenth / 10, yM: 1 }, fuse(`fuse${one.index}`), `on${one.index}`),
            two(),
          );
        expect(plan.runs).toHaveLength(2 + places.size);
        const lines = seen(plan, pxPerM).runs.map(({ runId, points }) => ({
          cable: cableOf.get(runId) ?? runId,
          line: pointsOfFlat(points),
        }));
        for (const { cable, line } of lines) {
          const middle = pointAlong(line, polylineLength(line) / 2)?.point ?? raise();
          for (const other of lines)
            if (other.cable !== cable)
              expect((nearestOnPolyline(other.line, middle)?.distanceM ?? 0) * pxPerM).toBeGreaterThan(10.99);
        }
      }),
    );
  });

  it('is drawn along its own line once its fuse is off the line of the other', () => {
    const drawing = seen(moveFitting(fused(two(), 'one', 2), 'oneFuse', { xM: 2, yM: 1.3 }));
    expect(lineIn(drawing, 'one')).toEqual([1, 1, 2, 1.3]);
    expect(lineIn(drawing, 'oneOn')).toEqual([2, 1.3, 3, 1]);
    expect(lineIn(drawing, 'other')).toEqual([1, 1, 3, 1]);
  });

  it('is one of two to a pass-through, before they go on and after', () => {
    const places = withFittings(pair(), [['grommet', 'passThrough', 2, 1]]);
    const there = withRun(
      withRun(places, 'one', 'battery.positive', 'grommet.through'),
      'other',
      'battery.positive',
      'grommet.through',
    );
    const on = withRun(
      withRun(there, 'oneOn', 'grommet.through', 'block.bus'),
      'otherOn',
      'grommet.through',
      'block.bus',
    );
    for (const plan of [there, withRun(there, 'oneOn', 'grommet.through', 'block.bus'), on]) {
      const drawing = seen(plan);
      expect([lineIn(drawing, 'one')[3], lineIn(drawing, 'other')[3]]).toEqual([0.89, 1.11]);
    }
    expect([lineIn(seen(on), 'oneOn')[3], lineIn(seen(on), 'otherOn')[3]]).toEqual([0.89, 1.11]);
  });

  it('ends at a battery or a block: what goes on behind is another cable', () => {
    const places = withFittings(pair(), [['bolt', 'ground', 0.2, 1]]);
    const plan = withRun(
      withRun(withRun(places, 'one', 'bolt.body', 'battery.negative'), 'on', 'battery.positive', 'block.bus'),
      'other',
      'bolt.body',
      'block.bus',
    );
    expect(lineIn(seen(plan), 'on')).toEqual([1, 1, 3, 1]);
  });

  it('has no end in a ring of fuses, and is drawn along its own line', () => {
    const places = withFittings(emptyPlan(), [
      ['a', 'fuse', 1, 1],
      ['b', 'fuse', 2, 1],
      ['c', 'fuse', 2, 2],
    ]);
    const ring = withRun(withRun(withRun(places, 'ab', 'a.out', 'b.in'), 'bc', 'b.out', 'c.in'), 'ca', 'c.out', 'a.in');
    expect(lineIn(seen(ring), 'ab')).toEqual([1, 1, 2, 1]);
  });
});

it('lays out what a gesture changes by the lanes of all', () => {
  const plan = two();
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const { runs } = drawSheet(plan, sheet, answerWith(), words);
  const yM = (some: readonly RunShape[]) =>
    sideBySide(plan, { runs: some }, PX_PER_M).runs.map(({ points }) => points[3]);
  expect(yM(runs)).toEqual([0.89, 1.11]);
  expect(yM(runs.slice(1))).toEqual([1.11]);
});

it('leaves a plan in which every run has its own line as it is', () => {
  const plan = feedPlan();
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const drawing = drawSheet(plan, sheet, answerWith(), words);
  expect(sideBySide(plan, drawing, PX_PER_M)).toBe(drawing);
});

describe('what hangs on a run that is drawn beside its line', () => {
  const length = { lengthM: 2, origin: 'drawn', plusMinusM: 0.1 } as const;
  const bare = (unprotectedM: number) =>
    answerWith({
      runs: [runAnswer('one', { length }), runAnswer('other', { length, unprotectedM })],
      sources: [sourceAnswer('battery', { unprotectedM, runIds: ['other'] })],
    });
  const stripe = (plan: Plan, unprotectedM: number) =>
    rounded(seen(plan, PX_PER_M, bare(unprotectedM)).hazards[0]?.points ?? []);

  it('is its stripe, over the whole of it', () => {
    expect(stripe(two(), 2)).toEqual(lineIn(seen(two()), 'other'));
  });

  it('is a stripe over a part of it, which ends beside the line', () => {
    expect(stripe(two(), 1)).toEqual([1, 1, 1.11, 1.11, 2, 1.11]);
  });

  it('is a stripe that begins at its far end', () => {
    const turned = withRun(
      withRun(pair(), 'one', 'battery.positive', 'block.bus'),
      'other',
      'block.bus',
      'battery.positive',
    );
    expect(stripe(turned, 1)).toEqual([1, 1, 1.11, 1.11, 2, 1.11]);
  });

  it('is the label with its figures, which stands on it and away from the other', () => {
    const turned = moveFitting(two(), 'block', { xM: 1, yM: 3 });
    const asideOf = (plan: Plan) =>
      ['one', 'other'].map((id) => seen(plan, PX_PER_M, bare(0)).labels.find(({ key }) => key === `run.${id}`)?.asideX);
    // going down the first lies to the right, and half of a label beside it is away from the second
    expect(asideOf(turned).map((part) => Number(part?.toFixed(9)))).toEqual([0.5, -0.5]);
    // above one another they are apart as they are
    expect(asideOf(two()).map((part) => Math.abs(part ?? 1))).toEqual([0, 0]);
  });

  it('is the label with its figures, wherever along it that stands', () => {
    const { labels } = seen(two(), PX_PER_M, bare(0));
    const [one, other] = ['one', 'other'].map((id) => labels.find(({ key }) => key === `run.${id}`));
    expect(one?.at).toEqual({ xM: 2, yM: 0.89 });
    expect(other?.at.yM).toBeCloseTo(1.11, 9);
    expect(other?.elsewhere?.map(({ yM }) => Number(yM.toFixed(9)))).toEqual([1.11, 1.11]);
  });
});

/** Places so far apart that no plate lies on another, joined every which way; few bends, so that lines meet. */
const PLACES = [
  [1, 1],
  [3, 1],
  [1, 2],
  [3, 2],
] as const;
const anyRun = fc.record({
  from: fc.nat(3),
  step: fc.integer({ min: 1, max: 3 }),
  bends: fc.array(fc.constantFrom([2, 1] as const, [2, 1.5] as const, [2, 2] as const), { maxLength: 2 }),
});

function planOf(runs: readonly { from: number; step: number; bends: readonly (readonly [number, number])[] }[]): Plan {
  const fittings = withFittings(
    emptyPlan(),
    PLACES.map(([xM, yM], index) => [`p${index}`, 'passThrough', xM, yM]),
  );
  return runs.reduce(
    (plan, { from, step, bends }, index) =>
      withRun(plan, `run${index}`, `p${from}.through`, `p${(from + step) % 4}.through`, bends),
    fittings,
  );
}

const PARTS = [0, 0.2, 0.4, 0.6, 0.8, 1] as const;

/** How far any place of a line is from another line, m. */
const strays = (line: readonly Point[], other: readonly Point[]): number =>
  Math.max(
    ...[...segmentsOf(line)]
      .flatMap(([a, b]) => PARTS.map((part) => between(a, b, part)))
      .map((point) => nearestOnPolyline(other, point)?.distanceM ?? 0),
  );

describe('any plan', () => {
  it('draws no run of a sheet on another, and each from fitting to fitting', () => {
    fc.assert(
      fc.property(fc.array(anyRun, { maxLength: 7 }), fc.integer({ min: 40, max: 1000 }), (runs, pxPerM) => {
        const plan = planOf(runs);
        const drawn = seen(plan, pxPerM).runs;
        const lines = drawn.map(({ points }) => pointsOfFlat(points));
        for (const [index, run] of plan.runs.entries()) {
          const ends = [run.from, run.to].map((end) => plan.fittings.find(({ id }) => id === end.fittingId));
          const places = ends.map((fitting) => (fitting === undefined ? null : placeOn(fitting, SHEET)));
          expect([lines[index]?.[0], lines[index]?.at(-1)]).toEqual(places);
          for (const other of lines.slice(0, index)) {
            const apartM = Math.max(strays(lines[index] ?? [], other), strays(other, lines[index] ?? []));
            // a lane is 22 px; lines that part by themselves may be nearer from afar
            expect(apartM * pxPerM).toBeGreaterThan(5);
          }
        }
      }),
    );
  });

  it('draws a run that is alone on its line as it lies in the plan', () => {
    const isOne = (one: readonly Point[], other: readonly Point[]) =>
      strays(one, other) < 0.001 && strays(other, one) < 0.001;
    fc.assert(
      fc.property(fc.array(anyRun, { maxLength: 7 }), (runs) => {
        const plan = planOf(runs);
        const own = plan.runs.map((run) => runPoints(plan, run));
        const drawn = seen(plan).runs.map(({ points }) => pointsOfFlat(points));
        for (const [index, line] of own.entries()) {
          const isAlone = own.every((other, place) => place === index || !isOne(line, other));
          if (isAlone) expect(drawn[index]).toEqual(line);
        }
      }),
    );
  });
});

function raise(): never {
  throw new Error('no such run');
}
