/** On a sheet with room no fitting goes without its name, and none gives way to a name that weighs more. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { type PaneSize, toScreen } from '../../src/desk/camera.ts';
import type { Camera, PaneId } from '../../src/desk/desk.ts';
import { drawSheet } from '../../src/drawing/draw.ts';
import { halfPlatePx } from '../../src/drawing/fittings.ts';
import { drawOutline } from '../../src/drawing/outline.ts';
import type { Drawing, LabelShape } from '../../src/drawing/shapes.ts';
import { sideBySide } from '../../src/drawing/sideBySide.ts';
import { newPlan } from '../../src/plan/create.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { withProposal } from '../../src/plan/propose/proposal.ts';
import { proposeFeed } from '../../src/plan/propose/propose.ts';
import type { Plan, Sheet } from '../../src/plan/schema.ts';
import { withUsualStart } from '../../src/plan/usualStart.ts';
import { fittedCamera } from '../../src/sketch/cameras.ts';
import { closeUpOf } from '../../src/sketch/closeUp.ts';
import { layOutLabels, type PlacedLabel } from '../../src/sketch/labelLayout.ts';
import { labelWords } from '../../src/sketch/labelWords.ts';
import { withMoreLabels } from '../../src/sketch/moreLabels.ts';
import { defaultName, unitsFor } from '../../src/words/index.ts';

type Pane = readonly [where: string, pane: PaneId, widthPx: number, heightPx: number, scale: number];

/** Where most names are to stand. */
const ALONE: Pane = ['the vehicle alone on a tablet', 'whole', 652, 690, 1];

/** Panes with room, and the size of their type, as measured on each screen. */
const PANES: readonly Pane[] = [
  ['the vehicle alone on a projector', 'whole', 1236, 946, 1.25],
  ALONE,
  ['the bay on a projector', 'bay', 470, 946, 1.25],
  ['the bay on a tablet on its side', 'bay', 652, 401, 1],
  ['the bay on a tablet upright', 'bay', 312, 620, 1],
  ['the bay on a phone', 'bay', 390, 566, 1],
];

const BODIES = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'] as const;

/** And panes that are crowded, since they stand beside another one or on a phone. */
const CROWDED: readonly Pane[] = [
  ['the vehicle beside the bay on a projector', 'whole', 764, 946, 1.25],
  ['the vehicle beside the bay on a tablet on its side', 'whole', 652, 285, 1],
  ['the vehicle beside the bay on a tablet upright', 'whole', 506, 620, 1],
  ['the vehicle on a phone', 'whole', 390, 566, 1],
];

/** A new plan as it is filled in, with all that is proposed for it. */
function proposed(
  body: (typeof BODIES)[number],
  battery: 'front' | 'seat' | 'rear',
  amplifiersW: number[],
  mirrored = false,
): Plan {
  let last = 0;
  const newId = () => {
    last += 1;
    return `new${last}`;
  };
  const empty = newPlan({ id: 'p', name: 'P', sheetId: 's', outline: DEFAULT_OUTLINES[body], mirrored });
  const begun = withUsualStart(empty, { battery, amplifiersW }, defaultName, newId);
  return withProposal(begun, proposeFeed(begun, 's', { fitting: defaultName }, newId));
}

const drawings = new Map<Plan, Drawing>();

/** Each plan is assessed once for all panes. */
function drawnOf(plan: Plan, sheet: Sheet): Drawing {
  const drawn = drawings.get(plan) ?? drawSheet(plan, sheet, assess(plan), labelWords(unitsFor(plan)));
  drawings.set(plan, drawn);
  return drawn;
}

interface Seen {
  drawing: Drawing;
  camera: Camera;
  size: PaneSize;
  scale: number;
  before: readonly PlacedLabel[];
  placed: readonly PlacedLabel[];
}

function seenIn(plan: Plan, [, pane, widthPx, heightPx, scale]: Pane, keep: string | null = null): Seen {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const size = { widthPx, heightPx };
  const camera = fittedCamera(sheet, pane, size, closeUpOf(plan, sheet, drawOutline(sheet)));
  const drawn = drawnOf(plan, sheet);
  const drawing = sideBySide(plan, drawn, camera.pxPerM);
  const before = layOutLabels(drawing, camera, size, { keep, scale });
  return {
    drawing,
    camera,
    size,
    scale,
    before,
    placed: withMoreLabels(before, drawing, camera, size, { keep, scale }),
  };
}

interface Rect {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const rect = (x: number, y: number, w: number, h: number): Rect => ({
  left: x - w / 2,
  top: y - h / 2,
  right: x + w / 2,
  bottom: y + h / 2,
});
const rectOf = ({ xPx, yPx, widthPx, heightPx }: PlacedLabel): Rect => rect(xPx, yPx, widthPx, heightPx);
const across = (one: Rect, other: Rect) => Math.max(0, one.left - other.right, other.left - one.right);
const down = (one: Rect, other: Rect) => Math.max(0, one.top - other.bottom, other.top - one.bottom);
const gap = (one: Rect, other: Rect) => Math.hypot(across(one, other), down(one, other));
const meet = (one: Rect, other: Rect) =>
  one.left < other.right - 0.01 &&
  other.left < one.right - 0.01 &&
  one.top < other.bottom - 0.01 &&
  other.top < one.bottom - 0.01;

/** The plates of a pane; those whose middle is well within it have a right to their name. */
function platesIn({ drawing, camera, size }: Seen) {
  const half = halfPlatePx(camera.pxPerM);
  return drawing.fittings.map(({ fittingId, at }) => {
    const { xPx, yPx } = toScreen(camera, size, at);
    const isSeen = xPx >= half && yPx >= half && xPx <= size.widthPx - half && yPx <= size.heightPx - half;
    return { id: fittingId, isSeen, rect: rect(xPx, yPx, 2 * half, 2 * half) };
  });
}

const isName = ({ kind }: LabelShape) => kind === 'fitting';
const named = (placed: readonly PlacedLabel[]) =>
  new Set(placed.filter(({ label }) => isName(label)).map(({ label }) => label.id));

const unnamed = (seen: Seen) => platesIn(seen).filter(({ id, isSeen }) => isSeen && !named(seen.placed).has(id));

/** The box of a label laid out where nothing is in its way. */
function boxAlone({ drawing, camera, scale }: Seen, label: LabelShape): PlacedLabel {
  const room = { widthPx: 3000, heightPx: 3000 };
  const bare = { ...drawing, fittings: [], runs: [], hazards: [], labels: [label] };
  const [alone] = layOutLabels(bare, camera, room, { keep: label.id, scale });
  if (alone === undefined) throw new Error('no room at all');
  return alone;
}

/** How far off its plate a name is still found, lines of type. */
const FAR_LINES = 1;
const LINE_PX = 20;
/** Half of a thick cable. */
const CLEAR_PX = 12;
const STEP_PX = 6;

/** Whether a name that does not stand could: searched for point by point, beside all that stands. */
function hasRoom(seen: Seen, id: string): boolean {
  const { drawing, camera, size, scale, placed } = seen;
  const label = drawing.labels.find((one) => isName(one) && one.id === id);
  const plates = platesIn(seen);
  const own = plates.find((one) => one.id === id)?.rect;
  if (label === undefined || own === undefined) throw new Error('no name');
  const { widthPx: w, heightPx: h } = boxAlone(seen, label);
  const inTheWay = [
    ...plates.map((plate) => plate.rect),
    ...placed.map(rectOf),
    // what the pane itself writes: its title above left, its scale below right
    { left: 0, top: 0, right: 180 * scale, bottom: 52 * scale },
    { left: size.widthPx - 220 * scale, top: size.heightPx - 36 * scale, right: size.widthPx, bottom: size.heightPx },
  ];
  const lines = [...drawing.runs, ...drawing.hazards].map(({ points }) => {
    const flat: { xPx: number; yPx: number }[] = [];
    for (let at = 0; at < points.length; at += 2)
      flat.push(toScreen(camera, size, { xM: points[at] ?? 0, yM: points[at + 1] ?? 0 }));
    return flat;
  });
  const far = FAR_LINES * LINE_PX * scale;
  for (let x = own.left - far - w / 2; x <= own.right + far + w / 2; x += STEP_PX) {
    for (let y = own.top - far - h / 2; y <= own.bottom + far + h / 2; y += STEP_PX) {
      const box = rect(x, y, w, h);
      if (box.left < 0 || box.top < 0 || box.right > size.widthPx || box.bottom > size.heightPx) continue;
      const ownPx = gap(box, own);
      if (ownPx > far || inTheWay.some((other) => meet(box, other))) continue;
      if (plates.some((plate) => plate.id !== id && gap(box, plate.rect) < 2 * Math.max(ownPx, 5))) continue;
      if (!lines.some((line) => passesBy(line, box))) return true;
    }
  }
  return false;
}

/** Whether a line comes too near to a box, followed in steps of 2 px. */
function passesBy(line: readonly { xPx: number; yPx: number }[], box: Rect): boolean {
  return line.some((to, index) => {
    const from = line[index - 1];
    if (from === undefined) return false;
    const steps = Math.ceil(Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) / 2);
    for (let step = 0; step <= steps; step += 1) {
      const share = step / Math.max(1, steps);
      const [x, y] = [from.xPx + (to.xPx - from.xPx) * share, from.yPx + (to.yPx - from.yPx) * share];
      if (gap(rect(x, y, 0, 0), box) < CLEAR_PX) return true;
    }
    return false;
  });
}

/** Plans of one to three amplifiers. */
const PLANS = BODIES.flatMap((body) =>
  [false, true].flatMap((mirrored) =>
    (['front', 'seat', 'rear'] as const).flatMap((battery) =>
      [[1000], [300, 1000], [300, 1000, 600]].map(
        (watts) =>
          [`${body} ${mirrored} ${battery} ${watts.length}`, proposed(body, battery, watts, mirrored)] as const,
      ),
    ),
  ),
);

/** To assess them all takes longer than a test may, on a slow machine. */
const ASSESSED_WITHIN_MS = 60_000;

beforeAll(() => {
  for (const [, plan] of PLANS) for (const sheet of plan.sheets) drawnOf(plan, sheet);
}, ASSESSED_WITHIN_MS);

describe('names', () => {
  it.each(PANES.filter(([, pane]) => pane === 'bay'))('all stand, with what is proposed, in %s', (...pane) => {
    for (const [name, plan] of PLANS) expect([name, unnamed(seenIn(plan, pane))]).toEqual([name, []]);
  });

  it.each(PANES.filter(([, pane]) => pane === 'whole'))('that do not stand have no room in %s', (...pane) => {
    for (const [name, plan] of PLANS) {
      const seen = seenIn(plan, pane);
      const lost = unnamed(seen).filter(({ id }) => hasRoom(seen, id));
      expect([name, lost]).toEqual([name, []]);
    }
  });

  it('all stand in the example, in every such pane', () => {
    const opened = openPlan(readFileSync('public/demo.plan.json', 'utf8'));
    if (!opened.ok) throw new Error('the example does not open');
    for (const pane of PANES) expect(unnamed(seenIn(opened.plan, pane))).toEqual([]);
  });

  it('cover nothing, stand nearest to their own plate, and take nothing from an unprotected length', () => {
    let found = 0;
    for (const [name, plan] of PLANS) {
      if (!name.endsWith('false rear 3')) continue;
      for (const pane of PANES) {
        const seen = seenIn(plan, pane);
        const plates = platesIn(seen);
        const lengthsIn = (list: readonly PlacedLabel[]) => list.filter(({ label }) => label.kind === 'hazard');
        expect(lengthsIn(seen.placed)).toEqual(lengthsIn(seen.before));
        // none that stood is given up for another
        for (const id of named(seen.before)) expect(named(seen.placed)).toContain(id);
        found += named(seen.placed).size - named(seen.before).size;
        const covered = seen.placed.flatMap((one, index) => {
          const others = [...seen.placed.slice(index + 1).map(rectOf), ...plates.map((plate) => plate.rect)];
          return isName(one.label) && others.some((other) => meet(rectOf(one), other)) ? [one.label.title] : [];
        });
        expect([name, covered]).toEqual([name, []]);
        const misleading = seen.placed.filter((one) => {
          const own = plates.find(({ id }) => id === one.label.id);
          if (own === undefined) return false;
          const ownPx = Math.max(across(rectOf(one), own.rect), down(rectOf(one), own.rect));
          return ownPx > 5.01 && plates.some((other) => other !== own && gap(rectOf(one), other.rect) <= ownPx);
        });
        expect([name, misleading]).toEqual([name, []]);
      }
    }
    expect(found).toBeGreaterThan(5);
  });

  it.each([...PANES, ...CROWDED])('stand no farther off their plate than a line of type in %s', (...pane) => {
    const most = FAR_LINES * LINE_PX * pane[4] + 0.01;
    for (const [name, plan] of PLANS) {
      const seen = seenIn(plan, pane);
      const plates = platesIn(seen);
      const far = seen.placed.filter((one) => {
        const own = plates.find(({ id }) => isName(one.label) && id === one.label.id);
        return own !== undefined && gap(rectOf(one), own.rect) > most;
      });
      expect([name, far.map(({ label }) => label.title)]).toEqual([name, []]);
    }
  });

  it('leave what is picked out where it stood', () => {
    const plan = proposed('saloon', 'rear', [300, 1000, 600]);
    for (const { id } of plan.fittings) {
      const { before, placed } = seenIn(plan, ALONE, id);
      const of = (list: readonly PlacedLabel[]) => list.find(({ label }) => label.id === id);
      expect(of(placed)).toEqual(of(before));
    }
  });
});
