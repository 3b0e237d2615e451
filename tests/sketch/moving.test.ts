import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadAssess } from '../../src/desk/answer.ts';
import { type PaneSize, toScreen } from '../../src/desk/camera.ts';
import type { Camera } from '../../src/desk/desk.ts';
import { drawSheet } from '../../src/drawing/draw.ts';
import { halfPlatePx } from '../../src/drawing/fittings.ts';
import type { Drawing } from '../../src/drawing/shapes.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import type { Plan, Point } from '../../src/plan/schema.ts';
import { groundOf } from '../../src/sketch/labelGround.ts';
import { layOutLabels, type PlacedLabel } from '../../src/sketch/labelLayout.ts';
import type { LabelCase } from '../../src/sketch/labelPlaces.ts';
import { type Live, liveOf } from '../../src/sketch/live.ts';
import { LATER_MS, layOutMoving, MovingLabels, RIDE_MS } from '../../src/sketch/movingLabels.ts';
import type { Scene } from '../../src/sketch/useScene.ts';
import { feedPlan, SHEET, withFittings } from '../drawing/support/plans.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';

/** Labels while a finger moves the fuse of a feed, whose cable from the battery nothing protects. */
const words = {
  length: (m: number) => `${m.toFixed(2)} m`,
  taped: String,
  current: (a: number) => `${a} A`,
  power: (w: number) => `${w} W`,
  gauge: String,
  unprotected: (m: number) => `${m.toFixed(2)} m`,
  continuesAt: String,
  locked: 'locked',
  separator: ' ',
};

const size: PaneSize = { widthPx: 800, heightPx: 500 };
const NEAR: Camera = { sheetId: SHEET, centreXM: 1.5, centreYM: 1, pxPerM: 200 };

/** The feed, and grounds all over the place for their names. */
const plan = withFittings(
  feedPlan(),
  [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((index) => [
    `ground${index}`,
    'ground',
    0.4 + 0.55 * (index % 5),
    index < 5 ? 0.3 : 1.7,
  ]),
);
const answer = answerWith({
  runs: [
    runAnswer('run1', { length: { lengthM: 0.3, origin: 'drawn', plusMinusM: 0.1 }, unprotectedM: 0.3 }),
    runAnswer('run2'),
    runAnswer('run3'),
  ],
  sources: [sourceAnswer('battery', { unprotectedM: 0.3, runIds: ['run1'] })],
});

/** What the fuse takes with it. */
const CHANGED = new Set(['fuse', 'run1', 'run2']);

function draw(of: Plan): Drawing {
  const [sheet] = of.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  return drawSheet(of, sheet, answer, words);
}

interface Moved {
  stood: readonly PlacedLabel[];
  still: readonly PlacedLabel[];
  live: readonly PlacedLabel[];
  drawn: Drawing;
}

/** The fuse is taken there; `keep` is what is picked out. */
function moved(to: Point, camera = NEAR, keep: string | null = null): Moved {
  const wish = { keep, scale: 1 };
  const before = draw(plan);
  const drawn = draw(moveFitting(plan, 'fuse', to));
  const stood = layOutLabels(before, camera, size, wish).filter(
    ({ label }) => label.kind !== 'hazard' && !CHANGED.has(label.id),
  );
  const left = {
    runs: before.runs.filter(({ runId }) => !CHANGED.has(runId)),
    fittings: before.fittings.filter(({ fittingId }) => !CHANGED.has(fittingId)),
    hazards: [],
  };
  const moving = {
    runs: drawn.runs.filter(({ runId }) => CHANGED.has(runId)),
    fittings: drawn.fittings.filter(({ fittingId }) => CHANGED.has(fittingId)),
    hazards: drawn.hazards,
    labels: drawn.labels.filter(({ kind, id }) => kind === 'hazard' || CHANGED.has(id)),
  };
  return { stood, drawn, ...layOutMoving(stood, groundOf(left, camera, size, 1), moving, camera, size, wish) };
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const boxOf = ({ xPx, yPx, widthPx, heightPx }: PlacedLabel): Box => ({
  left: xPx - widthPx / 2,
  right: xPx + widthPx / 2,
  top: yPx - heightPx / 2,
  bottom: yPx + heightPx / 2,
});

function plateAt(at: Point, camera: Camera): Box {
  const [{ xPx, yPx }, half] = [toScreen(camera, size, at), halfPlatePx(camera.pxPerM)];
  return { left: xPx - half, right: xPx + half, top: yPx - half, bottom: yPx + half };
}

const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Points along the stripes, a pixel apart or less. */
function stripePoints({ hazards }: Drawing, camera: Camera): { xPx: number; yPx: number }[] {
  return hazards.flatMap(({ points }) => {
    const line = points.flatMap((xM, index) =>
      index % 2 === 0 ? [toScreen(camera, size, { xM, yM: points[index + 1] ?? 0 })] : [],
    );
    return line.flatMap((from, index) => {
      const to = line[index + 1] ?? from;
      const steps = Math.ceil(Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx)) + 1;
      return Array.from({ length: steps }, (_, step) => ({
        xPx: from.xPx + ((to.xPx - from.xPx) * step) / steps,
        yPx: from.yPx + ((to.yPx - from.yPx) * step) / steps,
      }));
    });
  });
}

const isWithin = (box: Box, around: Box) =>
  box.left >= around.left && box.right <= around.right && box.top >= around.top && box.bottom <= around.bottom;

const isIn = (box: Box, { xPx, yPx }: { xPx: number; yPx: number }, marginPx = 0) =>
  xPx > box.left - marginPx && xPx < box.right + marginPx && yPx > box.top - marginPx && yPx < box.bottom + marginPx;

const WHOLE_PANE: Box = { left: 0, right: size.widthPx, top: 0, bottom: size.heightPx };

const keysOf = (labels: readonly PlacedLabel[]) => labels.map(({ label }) => label.key);

const isSeen = (at: Point, camera: Camera) => {
  const { xPx, yPx } = toScreen(camera, size, at);
  return xPx >= 0 && yPx >= 0 && xPx <= size.widthPx && yPx <= size.heightPx;
};

describe('labels while a finger moves something', () => {
  it('stay where they stood, and the moved one goes along', () => {
    // straight down a little, over nothing
    const { stood, still, live } = moved({ xM: 0.5, yM: 1.1 });
    expect(still.length).toBeGreaterThan(5);
    for (const label of still) expect(stood).toContain(label);
    expect(keysOf(live)).toContain('fitting.fuse');
    const [here, further] = [0.5, 0.7].map((xM) =>
      moved({ xM, yM: 1.35 }).live.find(({ label }) => label.key === 'fitting.fuse'),
    );
    expect((further?.xPx ?? 0) - (here?.xPx ?? 0)).toBeCloseTo(0.2 * NEAR.pxPerM, 6);
  });

  it('go out under a plate that comes over them, alone, and come back', () => {
    const away = moved({ xM: 0.5, yM: 1.1 });
    const under = away.still.find(({ label }) => label.id === 'ground7');
    if (under === undefined) throw new Error('Its name has no room.');
    const centre = {
      xM: NEAR.centreXM + (under.xPx - size.widthPx / 2) / NEAR.pxPerM,
      yM: NEAR.centreYM + (under.yPx - size.heightPx / 2) / NEAR.pxPerM,
    };
    const over = moved(centre);
    expect(keysOf(away.still)).toContain('fitting.ground7');
    expect(keysOf(over.still)).not.toContain('fitting.ground7');
    expect(keysOf(over.still).length).toBeGreaterThan(5);
    expect(keysOf(moved({ xM: 0.5, yM: 1.1 }).still)).toContain('fitting.ground7');
  });

  it('give way to a stripe that is drawn over them', () => {
    const away = moved({ xM: 0.5, yM: 1.1 });
    // from the battery (0.2, 1) slantwise over the second name of the lower row
    const over = moved({ xM: 1.9, yM: 2.4 });
    expect(keysOf(away.still).filter((key) => !keysOf(over.still).includes(key)).length).toBeGreaterThan(0);
  });

  it('say the unprotected length in a pane that sees any of its stripe, however little', () => {
    // the stripe from 0.2 m to 1 m along y = 1 m, of which a pane sees 0.1 m
    for (let centreXM = 0.16; centreXM < 1.04; centreXM += 0.01) {
      const near = { ...NEAR, pxPerM: 8_000, centreXM, centreYM: 1.01 };
      const { live } = moved({ xM: 1, yM: 1 }, near);
      const lengths = live.filter(({ label }) => label.kind === 'hazard');
      expect([centreXM, lengths.length]).toEqual([centreXM, 1]);
      for (const length of lengths) expect([centreXM, isWithin(boxOf(length), WHOLE_PANE)]).toEqual([centreXM, true]);
    }
  });

  it('look along a stripe only where none of the usual places is in sight', () => {
    const drawn = draw(moveFitting(plan, 'fuse', { xM: 1, yM: 1 }));
    let looks = 0;
    const labels = drawn.labels.map((label) => {
      if (label.kind !== 'hazard') return label;
      const { along = [], ...rest } = label;
      return Object.defineProperty({ ...rest, along }, 'along', {
        get: () => {
          looks += 1;
          return along;
        },
      });
    });
    const laidOutAt = (centreXM: number) => {
      const camera = { ...NEAR, pxPerM: 8_000, centreXM, centreYM: 1.01 };
      const ground = groundOf({ runs: [], fittings: [], hazards: [] }, camera, size, 1);
      return layOutMoving([], ground, { ...drawn, labels }, camera, size, { keep: null, scale: 1 }).live.length;
    };
    // its middle, and halfway to the next place
    expect([laidOutAt(0.6), looks]).toEqual([1, 0]);
    expect(laidOutAt(0.52)).toBe(1);
    expect(looks).toBeGreaterThan(0);
  });

  it('wherever it goes, at any zoom: nothing over a stripe or a plate, the dangerous length always, no other moved', () => {
    const place = fc.record({
      xM: fc.integer({ min: 0, max: 44 }).map((tenth) => tenth / 10),
      yM: fc.integer({ min: 0, max: 18 }).map((tenth) => tenth / 10),
    });
    const lost = new Set<string>();
    fc.assert(
      fc.property(
        place,
        fc.constantFrom(40, 90, 200, 500),
        fc.constantFrom(null, 'fuse', 'ground2'),
        (to, pxPerM, keep) => {
          const camera = { ...NEAR, pxPerM };
          const { stood, still, live, drawn } = moved(to, camera, keep);
          const stripe = stripePoints(drawn, camera);
          const plate = plateAt(drawn.fittings.find(({ fittingId }) => fittingId === 'fuse')?.at ?? to, camera);

          for (const label of still) {
            expect(stood).toContain(label);
            const box = boxOf(label);
            expect([label.label.key, overlap(box, plate)]).toEqual([label.label.key, false]);
            expect([label.label.key, stripe.some((point) => isIn(box, point))]).toEqual([label.label.key, false]);
            for (const other of live) {
              expect([label.label.key, other.label.key, overlap(box, boxOf(other))]).toEqual([
                label.label.key,
                other.label.key,
                false,
              ]);
            }
          }
          // what has gone had something come over it
          for (const label of stood.filter((one) => !still.includes(one))) {
            const box = boxOf(label);
            lost.add(label.label.key);
            const hasReason =
              overlap(box, plate) ||
              live.some((other) => overlap(box, boxOf(other))) ||
              stripe.some((point) => isIn(box, point, 14));
            expect([label.label.key, hasReason]).toEqual([label.label.key, true]);
          }

          const hazard = drawn.labels.find(({ kind }) => kind === 'hazard');
          if (hazard === undefined) throw new Error('Nothing is unprotected.');
          // where it only touches the edge, either is right
          const isStripeIn = (marginPx: number) => stripe.some((point) => isIn(WHOLE_PANE, point, marginPx));
          if (isStripeIn(0)) expect(keysOf(live)).toContain(hazard.key);
          if (!isStripeIn(1)) expect(keysOf(live)).not.toContain(hazard.key);
          const fuse = drawn.labels.find(({ key }) => key === 'fitting.fuse');
          if (keep === 'fuse' && fuse !== undefined) {
            expect(keysOf(live).includes('fitting.fuse')).toBe(isSeen(fuse.at, camera));
          }
          for (const label of live) {
            if (label.label.kind === 'hazard' || label.label.id === keep) continue;
            expect([label.label.key, stripe.some((point) => isIn(boxOf(label), point))]).toEqual([
              label.label.key,
              false,
            ]);
          }
        },
      ),
      { numRuns: 400, seed: 20261126 },
    );
    // the property has seen names go
    expect(lost.size).toBeGreaterThan(5);
  });
});

describe('labels from frame to frame', () => {
  beforeAll(loadAssess);

  const drawn = draw(plan);
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const scene: Scene = {
    plan,
    sheet,
    drawn,
    settled: drawn,
    changed: CHANGED,
    still: {
      runs: drawn.runs.filter(({ runId }) => !CHANGED.has(runId)),
      fittings: drawn.fittings.filter(({ fittingId }) => !CHANGED.has(fittingId)),
    },
    locked: new Set(),
    sight: 'all',
    proposal: [],
    closeUp: null,
  };
  const pane: LabelCase = { scene, camera: NEAR, size, keep: null, scale: 1 };
  const laidOut = layOutLabels(drawn, NEAR, size, pane);
  const movedTo = (xM: number): Plan => moveFitting(plan, 'fuse', { xM, yM: 1.35 });
  const liveAt = (draft: Plan, answered: Plan): Live => liveOf(scene, draft, answered);

  /** Labels at a clock that is set by hand. */
  function following() {
    let nowMs = 0;
    const due: number[] = [];
    const after = (ms: number) => {
      due.push(nowMs + ms);
      return () => undefined;
    };
    const labels = new MovingLabels({ nowMs: () => nowMs, after });
    const at = (ms: number, draft: Plan, answered = plan, on = pane) => {
      nowMs = ms;
      return labels.of(on, laidOut, liveAt(draft, answered), answered, () => undefined);
    };
    return { at, due };
  }
  const anew = (draft: Plan, answered = plan) => following().at(0, draft, answered);
  const nameOf = ({ live }: { live: readonly PlacedLabel[] }) => live.find(({ label }) => label.key === 'fitting.fuse');

  it('go along with what they name, and none of the others is laid out meanwhile', () => {
    const { at } = following();
    const [first, second] = [at(0, movedTo(0.5)), at(RIDE_MS - 1, movedTo(0.7))];
    expect(second.still).toBe(first.still);
    expect((nameOf(second)?.xPx ?? 0) - (nameOf(first)?.xPx ?? 0)).toBeCloseTo(0.2 * NEAR.pxPerM, 6);
    // from where they were laid out, not from the frame before
    const back = at(RIDE_MS - 1, movedTo(0.5));
    expect(nameOf(back)).toEqual(nameOf(first));
  });

  it('keep an unprotected length in sight while it goes along with a stripe moved in another pane', () => {
    // a finger there moves the fuse by 20 cm, and the middle of the stripe by 10 cm: as much as this pane shows
    const close = { ...pane, camera: { ...NEAR, pxPerM: 8_000, centreXM: 0.52, centreYM: 1.01 } };
    for (const [from, to] of [
      [1, 0.8],
      [0.8, 1],
    ] as const) {
      const { at } = following();
      const along = (xM: number): Plan => moveFitting(plan, 'fuse', { xM, yM: 1 });
      const lengthOf = ({ live }: { live: readonly PlacedLabel[] }) =>
        live.find(({ label }) => label.kind === 'hazard');
      expect(lengthOf(at(0, along(from), plan, close))).toBeDefined();
      for (let step = 1; step <= 5; step += 1) {
        const length = lengthOf(at(step, along(from + ((to - from) * step) / 5), plan, close));
        expect([step, length !== undefined && isWithin(boxOf(length), WHOLE_PANE)]).toEqual([step, true]);
      }
    }
  });

  it('are laid out anew when that was long ago, with each answer, and when the sheet is looked at otherwise', () => {
    const far = movedTo(2);
    const answered = movedTo(1.9);
    const { at, due } = following();
    at(0, movedTo(0.5));
    expect(at(RIDE_MS, far)).toEqual(anew(far));
    const before = at(RIDE_MS + 1, movedTo(0.5));
    expect(before.still).not.toEqual(anew(movedTo(0.5)).still);
    // the frame that shows an answer has enough to do: in it they go along, and ask for another one
    expect(due).toEqual([]);
    expect(at(RIDE_MS + 2, movedTo(0.5), answered).still).toBe(before.still);
    expect(due).toEqual([RIDE_MS + 2 + LATER_MS]);
    expect(at(RIDE_MS + 3, movedTo(0.5), answered)).toEqual(anew(movedTo(0.5), answered));
    expect(due).toHaveLength(1);
    const nearer = { ...pane, camera: { ...NEAR, pxPerM: 300 } };
    const seen = at(RIDE_MS + 4, far, answered, nearer);
    expect(seen).toEqual(following().at(0, far, answered, nearer));
  });
});
