/** Where labels stand in a pane: beside their thing, over nothing, and left out where there is no room. */
import { type PaneSize, type ScreenPoint, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { halfPlatePx } from '../drawing/fittings.ts';
import type { Drawing, LabelShape } from '../drawing/shapes.ts';
import { type Box, type Ground, groundOf, grown, overlap } from './labelGround.ts';
import { textWidth } from './textWidth.ts';

export interface PlacedLabel {
  label: LabelShape;
  /** Middle of the label, px of the pane. */
  xPx: number;
  yPx: number;
  widthPx: number;
  heightPx: number;
}

/** Mean advance of a figure in large bold type, as a part of its size. */
const BOLD = 0.6;
const LABEL_PX = 16;
export const LINE_PX = 20;
const PAD_PX = 6;
/** A long name is cut off here and not allowed to cover the sheet. */
export const LABEL_MAX_PX = 168;
const HAZARD_PX = 26;
const HAZARD_LINE_PX = 42;
export const GAP_PX = 5;

/** Labels grow with the room, for the back row of a class: `scale` is 1 on a tablet. */
export function sizeOf(label: LabelShape, scale: number): { w: number; h: number } {
  const { w, h } = baseSizeOf(label);
  return { w: w * scale, h: h * scale };
}

function baseSizeOf(label: LabelShape): { w: number; h: number } {
  const lineOf = (text: string, isBold: boolean) => textWidth(text, isBold) * LABEL_PX + 2 * PAD_PX;
  if (label.kind === 'hazard') return { w: label.figures.length * BOLD * HAZARD_PX + 28, h: HAZARD_LINE_PX };
  // a figure cut short is another figure
  if (label.kind === 'run') return { w: lineOf(label.figures, false), h: LINE_PX + 2 };
  const w = Math.max(lineOf(label.title, false), lineOf(label.figures, true));
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
const CORNERS = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;
/**
 * How much further off a name may stand where it has no room right beside its plate, in lines: also from a corner no
 * farther than one line in all, since what stands farther off is taken for another's.
 */
const FURTHER_LINES = 0.4;
/** And so many times as far from every other plate as from its own. */
export const CLEARLY_NEARER = 1.5;
/** On a sheet with more fittings than these names need not look further for room: that is asked anew with every zoom. */
export const MOST_LOOKING_FURTHER = 48;
/** Half of a stripe or a thick cable: a label keeps clear of all of it. */
export const HALF_STROKE_PX = 12;

export const isInside = ({ x, y, w, h }: Box, size: PaneSize): boolean =>
  x - w / 2 >= 0 && y - h / 2 >= 0 && x + w / 2 <= size.widthPx && y + h / 2 <= size.heightPx;

export const isSeen = ({ xPx: x, yPx: y }: ScreenPoint, size: PaneSize): boolean =>
  isInside({ x, y, w: 0, h: 0 }, size);

/** How far beside and below its middle a label may stand, in the order of trying. */
function* offsets(
  kind: LabelShape['kind'],
  size: { w: number; h: number },
  plate: number,
): Generator<readonly [dx: number, dy: number]> {
  const beside = plate + GAP_PX + size.w / 2;
  const under = plate + GAP_PX + size.h / 2;
  switch (kind) {
    case 'run':
      yield [0, 0];
      return;
    case 'fitting':
      yield* [[0, under] as const, [0, -under] as const, [beside, 0] as const, [-beside, 0] as const];
      // from a corner of the plate
      for (const [x, y] of CORNERS) yield [x * beside, y * under];
      return;
    case 'hazard':
      for (const offPx of HAZARD_RINGS_PX)
        for (const [x, y] of DIRECTIONS) yield [x * (offPx + size.w / 2), y * (offPx + size.h / 2)];
  }
}

export function clamped(box: Box, size: PaneSize): Box {
  const within = (value: number, half: number, total: number) => Math.max(half, Math.min(total - half, value));
  return { ...box, x: within(box.x, box.w / 2, size.widthPx), y: within(box.y, box.h / 2, size.heightPx) };
}

export interface Wish {
  /** The id whose label is shown even where it covers another. */
  keep: string | null;
  scale: number;
}

export const boxOf = ({ xPx, yPx, widthPx, heightPx }: PlacedLabel): Box => ({
  x: xPx,
  y: yPx,
  w: widthPx,
  h: heightPx,
});

/** Places to try, nearest to what is usual first: one after another, since the first mostly has room. */
export function* triesFor(
  label: LabelShape,
  isKept: boolean,
  camera: Camera,
  size: PaneSize,
  scale: number,
): Generator<Box> {
  const own = sizeOf(label, scale);
  const plate = halfPlatePx(camera.pxPerM);
  for (const at of [label.at, ...(label.elsewhere ?? [])]) {
    const place = toScreen(camera, size, at);
    const { xPx, yPx } = place;
    if (!isSeen(place, size)) continue;
    for (const [dx, dy] of offsets(label.kind, own, plate)) {
      const box = { x: xPx + dx + (label.asideX ?? 0) * own.w, y: yPx + dy, ...own };
      // what has to be shown gives way to the edge; the rest is shown whole or not at all
      if (isKept) yield clamped(box, size);
      else if (isInside(box, size)) yield box;
    }
  }
}

const isCrowded = (grounds: readonly Ground[]): boolean =>
  grounds.some(({ plates }) => plates.length > MOST_LOOKING_FURTHER);

/** The same for the name of a fitting that has found none: clearly nearer to its own plate than to any other. */
function furtherTries(
  label: LabelShape,
  grounds: readonly Ground[],
  camera: Camera,
  size: PaneSize,
  scale: number,
): Box[] {
  const place = toScreen(camera, size, label.at);
  if (label.kind !== 'fitting' || isCrowded(grounds) || !isSeen(place, size)) return [];
  const own = sizeOf(label, scale);
  const plate = halfPlatePx(camera.pxPerM);
  const { xPx, yPx } = place;
  const offPx = FURTHER_LINES * LINE_PX * scale;
  const isNearToo = (box: Box, other: Box) =>
    (other.x !== xPx || other.y !== yPx) && overlap(grown(box, CLEARLY_NEARER * offPx), other);
  return [...offsets('fitting', own, plate + offPx)]
    .map(([dx, dy]) => ({ x: xPx + dx, y: yPx + dy, ...own }))
    .filter(
      (box) => isInside(box, size) && !grounds.some(({ plates }) => plates.some((other) => isNearToo(box, other))),
    );
}

/**
 * The first place with room; one that no cable crosses, where cables matter and there is such a place. What has to be
 * shown stands in the first of all where none has.
 */
export function roomFor(
  tries: Iterable<Box>,
  label: LabelShape,
  isKept: boolean,
  grounds: readonly Ground[],
  taken: readonly Box[],
): Box | undefined {
  let crossed: Box | undefined;
  let first: Box | undefined;
  for (const box of tries) {
    if (isKept) first ??= box;
    const around = grown(box, HALF_STROKE_PX);
    if (taken.some((other) => overlap(box, other))) continue;
    if (grounds.some((ground) => ground.isTaken(box) || ground.isStriped(around))) continue;
    // a run's figures lie on the run; a name had better not
    if (label.kind === 'run' || !grounds.some((ground) => ground.isCrossed(around))) return box;
    crossed ??= box;
  }
  return crossed ?? first;
}

/** Each label where it has room beside what is there and beside those before it. */
export function placed(
  labels: readonly LabelShape[],
  grounds: readonly Ground[],
  camera: Camera,
  size: PaneSize,
  { keep, scale }: Wish,
): PlacedLabel[] {
  const done: PlacedLabel[] = [];
  const taken: Box[] = [];
  const rank = ({ kind, id }: LabelShape) => (kind === 'hazard' ? 0 : id === keep ? 1 : 2);
  for (const label of labels.toSorted((one, other) => rank(one) - rank(other))) {
    const isKept = rank(label) < 2;
    const box =
      roomFor(triesFor(label, isKept, camera, size, scale), label, isKept, grounds, taken) ??
      roomFor(furtherTries(label, grounds, camera, size, scale), label, isKept, grounds, taken);
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
export const layOutLabels = (
  { labels, ...things }: Drawing,
  camera: Camera,
  size: PaneSize,
  wish: Wish,
): PlacedLabel[] => placed(labels, [groundOf(things, camera, size, wish.scale)], camera, size, wish);
