import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { toScreen } from '../../src/desk/camera.ts';
import type { Camera } from '../../src/desk/desk.ts';
import { drawSheet } from '../../src/drawing/draw.ts';
import { halfPlatePx } from '../../src/drawing/fittings.ts';
import { drawOutline } from '../../src/drawing/outline.ts';
import type { Drawing, LabelShape } from '../../src/drawing/shapes.ts';
import { openPlan } from '../../src/plan/open.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { arrangementFor, bayShare } from '../../src/sketch/arrangement.ts';
import { cameraShowing, fittedCamera } from '../../src/sketch/cameras.ts';
import { closeUpOf } from '../../src/sketch/closeUp.ts';
import { barStepM, coarseStepM, gridStepM, linesBetween, snapStepM } from '../../src/sketch/grid.ts';
import { LABEL_MAX_PX, layOutLabels, type PlacedLabel } from '../../src/sketch/labelLayout.ts';
import { labelWords } from '../../src/sketch/labelWords.ts';
import { withMoreLabels } from '../../src/sketch/moreLabels.ts';
import { snapPoint } from '../../src/sketch/snap.ts';
import { namedExample } from '../../src/words/example.ts';
import { unitsFor } from '../../src/words/index.ts';
import { speakIn } from '../../src/words/language.ts';
import { BENCH, emptyPlan, feedPlan, SHEET, VAN } from '../drawing/support/plans.ts';
import { answerWith, sourceAnswer } from '../support/answers.ts';

const sheetOf = (plan: Plan) => {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  return sheet;
};

const overlaps = (a: PlacedLabel, b: PlacedLabel) =>
  Math.abs(a.xPx - b.xPx) * 2 < a.widthPx + b.widthPx && Math.abs(a.yPx - b.yPx) * 2 < a.heightPx + b.heightPx;

describe('the grid', () => {
  it.each([
    [2000, 0.005],
    [600, 0.05],
    [200, 0.05],
    [100, 0.1],
    [30, 0.5],
  ])('at %i px/m has lines every %f m', (pxPerM, stepM) => {
    expect(gridStepM(pxPerM)).toBe(stepM);
    expect(stepM * pxPerM).toBeGreaterThanOrEqual(9);
  });

  it.each([
    [2000, 0.005],
    [200, 0.05],
    [165, 0.05],
    [155, 0.1],
    [82, 0.1],
  ])('at %i px/m is snapped to every %f m', (pxPerM, stepM) => expect(snapStepM(pxPerM)).toBe(stepM));

  it('has every tenth or twentieth line stronger', () => {
    expect(coarseStepM(0.1)).toBe(1);
    expect(coarseStepM(0.05)).toBe(1);
    expect(coarseStepM(0.01)).toBeCloseTo(0.1, 12);
    expect(coarseStepM(0.005)).toBeCloseTo(0.1, 12);
  });

  it('lists the lines between two places, ends included', () => {
    expect(linesBetween(-0.1, 0.25, 0.1).map((x) => Number(x.toFixed(6)))).toEqual([-0.1, 0, 0.1, 0.2]);
    expect(linesBetween(0.01, 0.02, 0.1)).toEqual([]);
  });

  it('has a scale bar of at least 56 px', () => {
    for (const pxPerM of [15, 80, 200, 900]) expect(barStepM(pxPerM) * pxPerM).toBeGreaterThanOrEqual(56);
  });
});

describe('snapping', () => {
  const at = (xM: number, yM: number) => ({ xM, yM });

  it('goes to the grid where nothing pulls', () => {
    const { point } = snapPoint({ point: at(1.234, 0.777), pxPerM: 100, others: [], from: null });
    expect(point.xM).toBeCloseTo(1.2, 9);
    expect(point.yM).toBeCloseTo(0.8, 9);
  });

  it('goes to the axis of another fitting that is nearer than 7 px, and shows the line', () => {
    const { point, guides } = snapPoint({ point: at(1.26, 0.777), pxPerM: 100, others: [at(1.23, 2)], from: null });
    expect(point).toEqual(at(1.23, 0.8));
    expect(guides).toEqual([{ from: at(1.23, 2), to: at(1.23, 0.8) }]);
    const far = snapPoint({ point: at(1.16, 0.777), pxPerM: 100, others: [at(1.23, 2)], from: null });
    expect(far.point.xM).toBeCloseTo(1.2, 9);
  });

  it('goes to the nearest of several axes', () => {
    const { point } = snapPoint({ point: at(1.24, 0.5), pxPerM: 100, others: [at(1.28, 2), at(1.23, 2)], from: null });
    expect(point.xM).toBe(1.23);
  });

  it('goes to a 45 degree line from the bend before', () => {
    const { point } = snapPoint({ point: at(1.53, 1.5), pxPerM: 100, others: [], from: at(1, 1) });
    expect(point.xM - 1).toBeCloseTo(point.yM - 1, 9);
    expect(point.xM).toBeCloseTo(1.515, 6);
  });
});

describe('the panes', () => {
  const van = drawOutline(sheetOf(emptyPlan(VAN)));
  const bench = drawOutline(sheetOf(emptyPlan(BENCH)));

  it.each([
    ['a projector', 1400, 950, 'beside'],
    ['a tablet on its side', 680, 760, 'stacked'],
    ['a tablet upright', 820, 620, 'beside'],
    ['a phone', 390, 600, 'single'],
    ['a phone on its side', 700, 300, 'beside'],
  ] as const)('on %s are %s', (_name, widthPx, heightPx, expected) => {
    expect(arrangementFor({ widthPx, heightPx }, van)).toBe(expected);
  });

  it('are one where the outline has no bay', () => {
    expect(arrangementFor({ widthPx: 1400, heightPx: 900 }, bench)).toBe('single');
  });

  it.each([
    [1400, 950],
    [680, 760],
    [820, 620],
  ])('in %i x %i px show the bay larger than the whole, and neither too small to use', (widthPx, heightPx) => {
    const size = { widthPx, heightPx };
    const arrangement = arrangementFor(size, van);
    const share = bayShare(arrangement, size, van);
    expect(share).toBeGreaterThanOrEqual(0.3);
    expect(share).toBeLessThanOrEqual(0.7);
    const isBeside = arrangement === 'beside';
    const part = (of: number) =>
      isBeside ? { widthPx: widthPx * of, heightPx } : { widthPx, heightPx: heightPx * of };
    const sheet = sheetOf(emptyPlan(VAN));
    const closeUp = closeUpOf(emptyPlan(VAN), sheet, van);
    const bay = fittedCamera(sheet, 'bay', part(share), closeUp).pxPerM;
    const whole = fittedCamera(sheet, 'whole', part(1 - share), closeUp).pxPerM;
    expect(bay / whole).toBeGreaterThan(1.2);
  });

  it('fit all of what they are for', () => {
    const size = { widthPx: 500, heightPx: 400 };
    const sheet = sheetOf(emptyPlan(VAN));
    for (const [pane, bounds] of [
      ['whole', van.bounds],
      ['bay', van.bayBounds ?? van.bounds],
    ] as const) {
      const camera = fittedCamera(sheet, pane, size, closeUpOf(emptyPlan(VAN), sheet, van));
      const x = (xM: number) => (xM - camera.centreXM) * camera.pxPerM + size.widthPx / 2;
      const y = (yM: number) => (yM - camera.centreYM) * camera.pxPerM + size.heightPx / 2;
      expect(x(bounds.minXM)).toBeGreaterThanOrEqual(0);
      expect(x(bounds.maxXM)).toBeLessThanOrEqual(size.widthPx);
      expect(y(bounds.minYM)).toBeGreaterThanOrEqual(34);
      expect(y(bounds.maxYM)).toBeLessThanOrEqual(size.heightPx);
    }
  });

  it('move as little as shows a place, and not at all when it is seen', () => {
    const camera: Camera = { sheetId: SHEET, centreXM: 2, centreYM: 1, pxPerM: 100 };
    const size = { widthPx: 400, heightPx: 300 };
    expect(cameraShowing(camera, size, { xM: 3, yM: 1 })).toBe(camera);
    const moved = cameraShowing(camera, size, { xM: 5, yM: 1 });
    expect(moved).toEqual({ ...camera, centreXM: 5 - 1.6 });
  });
});

describe('labels', () => {
  const words = {
    length: String,
    taped: String,
    current: String,
    power: String,
    gauge: String,
    unprotected: String,
    continuesAt: String,
    locked: 'locked',
    separator: ' ',
  };
  const drawn = drawSheet(feedPlan(), sheetOf(feedPlan()), answerWith(), words);
  const camera: Camera = { sheetId: SHEET, centreXM: 1.5, centreYM: 1, pxPerM: 200 };
  const size = { widthPx: 800, heightPx: 500 };
  const options = { keep: null, scale: 1 };
  const hazard: LabelShape = {
    key: 'h',
    kind: 'hazard',
    id: 'battery',
    at: { xM: 0.35, yM: 1 },
    title: '',
    figures: '30 cm',
  };
  const withHazard: Drawing = { ...drawn, labels: [...drawn.labels, hazard] };

  it('never overlap one another, at any zoom', () => {
    for (const pxPerM of [40, 90, 200, 500]) {
      const placed = layOutLabels(withHazard, { ...camera, pxPerM }, size, options);
      for (const [index, a] of placed.entries()) {
        for (const b of placed.slice(index + 1)) expect(overlaps(a, b), `${a.label.key} ${b.label.key}`).toBe(false);
      }
    }
  });

  it('show the unprotected length beside what is seen of a stripe whose middle is out of sight', () => {
    const { sources, runs } = { sources: [sourceAnswer('battery', { unprotectedM: 0.3, runIds: ['run1'] })], runs: [] };
    const bare = drawSheet(feedPlan(), sheetOf(feedPlan()), answerWith({ sources, runs }), words);
    // from the battery at 0.2 m to the fuse at 0.5 m; the pane ends between its middle and the fuse
    const near = { ...camera, pxPerM: 2_000, centreXM: 0.4 + size.widthPx / 2 / 2_000 };
    const length = layOutLabels(bare, near, size, options).find(({ label }) => label.kind === 'hazard');
    expect(length).toBeDefined();
    expect((length?.xPx ?? 0) - (length?.widthPx ?? 0) / 2).toBeGreaterThanOrEqual(0);
    // and nowhere where nothing of it is seen
    const away = layOutLabels(bare, { ...near, centreXM: 2 }, size, options);
    expect(away.filter(({ label }) => label.kind === 'hazard')).toEqual([]);
  });

  it('show the unprotected length in a pane that sees any of its stripe, however little, on whichever of its runs', () => {
    const sources = [sourceAnswer('battery', { unprotectedM: 0.8, runIds: ['run1', 'run2'] })];
    const bare = drawSheet(feedPlan(), sheetOf(feedPlan()), answerWith({ sources, runs: [] }), words);
    const small = { widthPx: 300, heightPx: 300 };
    // the stripe from 0.2 m to 1 m, the battery's own run to the fuse at 0.5 m; 37 mm of it are in sight
    for (let centreXM = 0.19; centreXM < 1.01; centreXM += 0.01) {
      const near = { ...camera, pxPerM: 8_000, centreXM, centreYM: 1.01 };
      const length = withMoreLabels(layOutLabels(bare, near, small, options), bare, near, small, options);
      const places = length.filter(({ label }) => label.kind === 'hazard').map(({ xPx }) => xPx > 0 && xPx < 300);
      expect([centreXM, places]).toEqual([centreXM, [true]]);
    }
  });

  it('always show the unprotected length, also when there is room for nothing else', () => {
    for (const pxPerM of [15, 40, 200]) {
      const near = { ...camera, centreXM: 0.35, pxPerM };
      expect(
        layOutLabels(withHazard, near, { widthPx: 200, heightPx: 140 }, options).map(({ label }) => label.key),
      ).toContain('h');
    }
  });

  it('keep the unprotected length off the stripe', () => {
    const placed = layOutLabels(withHazard, camera, size, options).find(({ label }) => label.key === 'h');
    // the stripe lies along y = 1, the middle of the pane
    expect(Math.abs((placed?.yPx ?? 0) - size.heightPx / 2)).toBeGreaterThanOrEqual((placed?.heightPx ?? 0) / 2);
  });

  it('leave the stripe free of names and figures', () => {
    const stripe = { runId: 'run3', points: [1, 1, 3, 1], lengthM: 2, widthPx: 14 };
    const run: LabelShape = { key: 'r', kind: 'run', id: 'run3', at: { xM: 2, yM: 1 }, title: '', figures: '2 m' };
    const keysWith = (hazards: Drawing['hazards']) =>
      layOutLabels({ ...drawn, labels: [run], hazards }, camera, size, options).map(({ label }) => label.key);
    expect(keysWith([])).toEqual(['r']);
    expect(keysWith([stripe])).toEqual([]);
  });

  it('cut a name of 200 letters to what a label may be wide', () => {
    const [first, ...rest] = drawn.labels;
    if (first === undefined) throw new Error('no label');
    const long = { ...drawn, labels: [{ ...first, title: 'x'.repeat(200) }, ...rest] };
    const placed = layOutLabels(long, camera, size, options).find(({ label }) => label.key === first.key);
    expect(placed?.widthPx).toBe(LABEL_MAX_PX);
  });

  it('take as much room as the letters of the name need', () => {
    const [first] = drawn.labels;
    if (first === undefined) throw new Error('no label');
    const widthOf = (title: string) =>
      layOutLabels({ ...drawn, labels: [{ ...first, title, figures: '' }] }, camera, size, options)[0]?.widthPx ?? 0;
    // advances of the type's letters, measured in a browser at 100 px: W 86, m 84, i 25, l 26
    expect(widthOf('WmWmWm')).toBeGreaterThanOrEqual(3 * 16 * (0.86 + 0.84));
    expect(widthOf('ililil')).toBeGreaterThanOrEqual(3 * 16 * (0.25 + 0.26));
    expect(widthOf('ililil')).toBeLessThan(widthOf('WmWmWm') / 2);
  });

  it('show the one that is picked out before others', () => {
    // a pane in which the title and the scale leave no room for all names
    const [crowded, small] = [
      { ...camera, pxPerM: 40 },
      { widthPx: 240, heightPx: 130 },
    ];
    const without = layOutLabels(drawn, crowded, small, options).map(({ label }) => label.id);
    const hidden = drawn.fittings.find(({ fittingId }) => !without.includes(fittingId));
    expect(hidden).toBeDefined();
    const kept = layOutLabels(drawn, crowded, small, { keep: hidden?.fittingId ?? '', scale: 1 });
    expect(kept.map(({ label }) => label.id)).toContain(hidden?.fittingId);
  });

  it('grow with the page', () => {
    const [small, large] = [1, 1.25].map((scale) => layOutLabels(drawn, camera, size, { keep: null, scale })[0]);
    expect(large?.widthPx).toBeCloseTo(1.25 * (small?.widthPx ?? 0), 6);
  });

  it('keep clear of the title of the pane and of its scale, unless they have to be shown', () => {
    // wherever the camera looks, so that names come to lie in both corners
    for (const centreXM of [0.5, 1, 1.5, 2, 2.5, 3]) {
      for (const centreYM of [0, 0.5, 1, 1.5, 2]) {
        const placed = layOutLabels(drawn, { ...camera, centreXM, centreYM }, size, options);
        for (const { xPx, yPx, widthPx, heightPx } of placed) {
          const isOnTitle = xPx - widthPx / 2 < 150 && yPx - heightPx / 2 < 44;
          const isOnScale = xPx + widthPx / 2 > size.widthPx - 170 && yPx + heightPx / 2 > size.heightPx - 30;
          expect([centreXM, centreYM, isOnTitle || isOnScale]).toEqual([centreXM, centreYM, false]);
        }
      }
    }
  });
});

describe('the labels of the example', () => {
  afterEach(() => speakIn('en'));

  /** The pane of the whole vehicle, and the size of its type, as measured on each screen. */
  const PANES = [
    ['a projector, to a class', 685, 1021, 1.5],
    ['a projector', 764, 946, 1.25],
    ['a tablet on its side', 652, 285, 1],
    ['a tablet upright', 506, 620, 1],
  ] as const;
  /** What stands this near to its plate can be meant for no other, px. */
  const RIGHT_BESIDE_PX = 5.01;

  it.each(PANES.flatMap((pane) => [[...pane, 'en'] as const, [...pane, 'de'] as const]))(
    'on %s (%i x %i px, type x %f) name every fitting there is room for, each beside its own plate: %s',
    async (_where, widthPx, heightPx, scale, language) => {
      await speakIn(language);
      const opened = openPlan(readFileSync('public/demo.plan.json', 'utf8'));
      if (!opened.ok) throw new Error('the example does not open');
      const plan = namedExample(opened.plan);
      const sheet = sheetOf(plan);
      const drawing = drawSheet(plan, sheet, assess(plan), labelWords(unitsFor(plan)));
      const size = { widthPx, heightPx };
      const camera = fittedCamera(sheet, 'whole', size, null);
      const wish = { keep: null, scale };
      const placed = withMoreLabels(layOutLabels(drawing, camera, size, wish), drawing, camera, size, wish);
      const names = placed.filter(({ label }) => label.kind === 'fitting');
      const named = new Set(names.map(({ label }) => label.title));
      const unnamed = plan.fittings.map(({ name }) => name).filter((name) => !named.has(name));
      // German names are longer, and none is worth the stripe's length
      expect(unnamed.length).toBeLessThanOrEqual(language === 'en' ? 0 : 2);
      expect(placed.filter(({ label }) => label.kind === 'hazard')).toHaveLength(1);
      for (const [index, a] of placed.entries()) {
        for (const b of placed.slice(index + 1)) expect(overlaps(a, b), `${a.label.key} ${b.label.key}`).toBe(false);
      }
      const half = halfPlatePx(camera.pxPerM);
      const wayTo = (label: PlacedLabel, at: { xPx: number; yPx: number }) =>
        Math.max(
          Math.abs(label.xPx - at.xPx) - label.widthPx / 2 - half,
          Math.abs(label.yPx - at.yPx) - label.heightPx / 2 - half,
        );
      for (const label of names) {
        const own = wayTo(label, toScreen(camera, size, label.label.at));
        if (own <= RIGHT_BESIDE_PX) continue;
        for (const { fittingId, at } of drawing.fittings) {
          if (fittingId === label.label.id) continue;
          expect(wayTo(label, toScreen(camera, size, at)), `${label.label.title} ${fittingId}`).toBeGreaterThan(own);
        }
      }
    },
  );
});
