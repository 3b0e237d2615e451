/** Where labels stand in a pane: beside their thing, over nothing, and left out where there is no room. */
import { type PaneSize, type ScreenPoint, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { halfPlatePx } from '../drawing/fittings.ts';
import { pointsOfFlat } from '../drawing/runs.ts';
import type { Drawing, LabelShape } from '../drawing/shapes.ts';

export interface PlacedLabel {
  label: LabelShape;
  /** Middle of the label, px of the pane. */
  xPx: number;
  yPx: number;
  widthPx: number;
  heightPx: number;
}

interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

/** Mean advance of a letter, as a part of the type size; and the size itself. */
const LETTER = 0.53;
const BOLD = 0.6;
const LABEL_PX = 16;
const LINE_PX = 20;
const PAD_PX = 6;
/** A long name is cut off here and not allowed to cover the sheet. */
export const LABEL_MAX_PX = 168;
const HAZARD_PX = 26;
const HAZARD_LINE_PX = 42;
const GAP_PX = 5;

/** Labels grow with the room, for the back row of a class: `scale` is 1 on a tablet. */
function sizeOf(label: LabelShape, scale: number): { w: number; h: number } {
  const { w, h } = baseSizeOf(label);
  return { w: w * scale, h: h * scale };
}

function baseSizeOf(label: LabelShape): { w: number; h: number } {
  const letters = (text: string, typePx: number) => text.length * LETTER * typePx + 2 * PAD_PX;
  if (label.kind === 'hazard') return { w: label.figures.length * BOLD * HAZARD_PX + 28, h: HAZARD_LINE_PX };
  // a figure cut short is another figure
  if (label.kind === 'run') return { w: letters(label.figures, LABEL_PX), h: LINE_PX + 2 };
  const w = Math.max(letters(label.title, LABEL_PX), letters(label.figures, LABEL_PX));
  return { w: Math.min(LABEL_MAX_PX, w), h: label.figures === '' ? LINE_PX : 2 * LINE_PX };
}

/** How far from the stripe its length may stand, and on which sides: beside it first, on a corner after that. */
const HAZARD_RINGS_PX = [16, 40, 70, 110] as const;
const DIRECTIONS = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
] as const;
/** Half of a stripe or a thick cable: a label keeps clear of all of it. */
const HALF_STROKE_PX = 12;

const grown = (box: Box, byPx: number): Box => ({ ...box, w: box.w + 2 * byPx, h: box.h + 2 * byPx });

const overlap = (a: Box, b: Box): boolean => Math.abs(a.x - b.x) * 2 < a.w + b.w && Math.abs(a.y - b.y) * 2 < a.h + b.h;

const isInside = (box: Box, size: PaneSize): boolean =>
  box.x - box.w / 2 >= 0 &&
  box.y - box.h / 2 >= 0 &&
  box.x + box.w / 2 <= size.widthPx &&
  box.y + box.h / 2 <= size.heightPx;

/** Whether a cable passes through the box; both in px. */
function isCrossed(box: Box, lines: readonly (readonly ScreenPoint[])[]): boolean {
  return lines.some((line) =>
    line.some((b, index) => {
      const a = line[index - 1];
      return a !== undefined && segmentMeets(box, a, b);
    }),
  );
}

/** Clips the segment to the box (Liang and Barsky): what is left is what crosses. */
function segmentMeets(box: Box, a: ScreenPoint, b: ScreenPoint): boolean {
  let [enters, leaves] = [0, 1];
  const sides = [
    [a.xPx - b.xPx, a.xPx - (box.x - box.w / 2)],
    [b.xPx - a.xPx, box.x + box.w / 2 - a.xPx],
    [a.yPx - b.yPx, a.yPx - (box.y - box.h / 2)],
    [b.yPx - a.yPx, box.y + box.h / 2 - a.yPx],
  ] as const;
  for (const [toward, room] of sides) {
    if (toward === 0 && room < 0) return false;
    if (toward < 0) enters = Math.max(enters, room / toward);
    if (toward > 0) leaves = Math.min(leaves, room / toward);
  }
  return enters < leaves;
}

/** Places to try, nearest to what is usual first. */
function candidates(label: LabelShape, x: number, y: number, size: { w: number; h: number }, plate: number): Box[] {
  const at = (dx: number, dy: number): Box => ({ x: x + dx, y: y + dy, ...size });
  const beside = plate + GAP_PX + size.w / 2;
  const under = plate + GAP_PX + size.h / 2;
  switch (label.kind) {
    case 'run':
      return [at(0, 0)];
    case 'fitting':
      return [
        ...[at(0, under), at(0, -under), at(beside, 0), at(-beside, 0)],
        // from a corner of the plate, and a line further off: still nearer to it than to another
        ...[at(beside, under), at(-beside, under), at(beside, -under), at(-beside, -under)],
        ...[at(0, under + LINE_PX), at(0, -under - LINE_PX)],
      ];
    case 'hazard':
      return HAZARD_RINGS_PX.flatMap((offPx) =>
        DIRECTIONS.map(([dx, dy]) => at(dx * (offPx + size.w / 2), dy * (offPx + size.h / 2))),
      );
  }
}

/** What the pane itself writes: its title above left, its scale below right. About as large as they come, px. */
const TITLE = { w: 176, h: 52 } as const;
const SCALE = { w: 190, h: 36 } as const;

const corners = ({ widthPx, heightPx }: PaneSize, scale: number): Box[] => [
  { x: (TITLE.w / 2) * scale, y: (TITLE.h / 2) * scale, w: TITLE.w * scale, h: TITLE.h * scale },
  { x: widthPx - (SCALE.w / 2) * scale, y: heightPx - (SCALE.h / 2) * scale, w: SCALE.w * scale, h: SCALE.h * scale },
];

function clamped(box: Box, size: PaneSize): Box {
  const within = (value: number, half: number, total: number) => Math.max(half, Math.min(total - half, value));
  return { ...box, x: within(box.x, box.w / 2, size.widthPx), y: within(box.y, box.h / 2, size.heightPx) };
}

/** What labels keep clear of, px of the pane. */
export interface Ground {
  plates: readonly Box[];
  cables: readonly (readonly ScreenPoint[])[];
  /** Nothing is written over a stripe. */
  stripes: readonly (readonly ScreenPoint[])[];
  corners: readonly Box[];
  /** Half a plate. */
  plate: number;
}

interface Wish {
  /** The id whose label is shown even where it covers another. */
  keep: string | null;
  scale: number;
}

type Things = Pick<Drawing, 'fittings' | 'runs' | 'hazards'>;

export function groundOf(things: Things, camera: Camera, size: PaneSize, scale: number): Ground {
  const plate = halfPlatePx(camera.pxPerM);
  const lineOf = (flat: readonly number[]) => pointsOfFlat(flat).map((point) => toScreen(camera, size, point));
  return {
    plates: things.fittings.map(({ at }): Box => {
      const { xPx, yPx } = toScreen(camera, size, at);
      return { x: xPx, y: yPx, w: 2 * plate, h: 2 * plate };
    }),
    cables: things.runs.map(({ points }) => lineOf(points)),
    stripes: things.hazards.map(({ points }) => lineOf(points)),
    corners: corners(size, scale),
    plate,
  };
}

const boxOf = ({ xPx, yPx, widthPx, heightPx }: PlacedLabel): Box => ({ x: xPx, y: yPx, w: widthPx, h: heightPx });

/** The first place with room; one that no cable crosses, where cables matter and there is such a place. */
function roomFor(
  tries: readonly Box[],
  cables: Ground['cables'] | null,
  stripes: Ground['stripes'],
  taken: readonly Box[],
): Box | undefined {
  let crossed: Box | undefined;
  for (const box of tries) {
    const around = grown(box, HALF_STROKE_PX);
    if (taken.some((other) => overlap(box, other)) || isCrossed(around, stripes)) continue;
    // a run's figures lie on the run; a name had better not
    if (cables === null || !isCrossed(around, cables)) return box;
    crossed ??= box;
  }
  return crossed;
}

/** Each label where it has room beside what is there and beside those before it. */
function placed(
  labels: readonly LabelShape[],
  ground: Ground,
  camera: Camera,
  size: PaneSize,
  { keep, scale }: Wish,
): PlacedLabel[] {
  const { cables, stripes, plate } = ground;
  const done: PlacedLabel[] = [];
  const taken: Box[] = [...ground.plates, ...ground.corners];
  const inOrder = [
    ...labels.filter(({ kind }) => kind === 'hazard'),
    ...labels.filter(({ kind, id }) => kind !== 'hazard' && id === keep),
    ...labels.filter(({ kind, id }) => kind !== 'hazard' && id !== keep),
  ];
  for (const label of inOrder) {
    const { xPx, yPx } = toScreen(camera, size, label.at);
    if (xPx < 0 || yPx < 0 || xPx > size.widthPx || yPx > size.heightPx) continue;
    const wished = [label.at, ...(label.elsewhere ?? [])].flatMap((at) => {
      const { xPx: x, yPx: y } = toScreen(camera, size, at);
      return candidates(label, x, y, sizeOf(label, scale), plate);
    });
    const isKept = label.kind === 'hazard' || label.id === keep;
    // what has to be shown gives way to the edge; the rest is shown whole or not at all
    const tries = isKept ? wished.map((box) => clamped(box, size)) : wished.filter((box) => isInside(box, size));
    const box = roomFor(tries, label.kind === 'run' ? null : cables, stripes, taken) ?? (isKept ? tries[0] : undefined);
    if (box === undefined) continue;
    taken.push(box);
    done.push({ label, xPx: box.x, yPx: box.y, widthPx: box.w, heightPx: box.h });
  }
  return done;
}

/**
 * Labels with room, in the order of the drawing: the length of an unprotected stretch always, then what is picked out,
 * then names, then figures of runs.
 */
export const layOutLabels = (drawing: Drawing, camera: Camera, size: PaneSize, wish: Wish): PlacedLabel[] =>
  placed(drawing.labels, groundOf(drawing, camera, size, wish.scale), camera, size, wish);

/** What a gesture changes, and how its things are labelled. */
export interface Moving extends Things {
  labels: readonly LabelShape[];
}

/**
 * Labels while a gesture is under way: those of what it changes are laid out anew, the rest stay where they stood, and
 * give way to what has come over them. `ground` is what the gesture leaves as it is.
 */
export function layOutMoving(
  stood: readonly PlacedLabel[],
  ground: Ground,
  moving: Moving,
  camera: Camera,
  size: PaneSize,
  wish: Wish,
): { still: PlacedLabel[]; live: PlacedLabel[] } {
  const moved = groundOf(moving, camera, size, wish.scale);
  const both = {
    ...moved,
    plates: [...ground.plates, ...moved.plates],
    cables: [...ground.cables, ...moved.cables],
  };
  const live = placed(moving.labels, both, camera, size, wish);
  const over = [...live.map(boxOf), ...moved.plates];
  const still = stood.filter((label) => {
    const box = boxOf(label);
    return !over.some((other) => overlap(box, other)) && !isCrossed(grown(box, HALF_STROKE_PX), moved.stripes);
  });
  return { still, live };
}
