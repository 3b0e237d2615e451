/**
 * Room for labels that have found none in their usual places: for a length beside what is seen of its stripe, for a name
 * between those places, where another name stands that has room elsewhere, and where the figures of a run stand. What
 * has to be shown stays where it is.
 */
import { type PaneSize, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { Drawing, LabelShape } from '../drawing/shapes.ts';
import { type Box, type Ground, groundOf, grown, overlap } from './labelGround.ts';
import {
  boxOf,
  CLEARLY_NEARER,
  GAP_PX,
  HALF_STROKE_PX,
  isInside,
  isSeen,
  LINE_PX,
  MOST_LOOKING_FURTHER,
  type PlacedLabel,
  roomFor,
  sizeOf,
  triesFor,
  type Wish,
} from './labelLayout.ts';
import { isFixed, withMoreLengths } from './stripesInSight.ts';

/** How far off its plate, in lines: from a corner too no farther than one in all, or it is taken for another's. */
const OFF_LINES = [0, 0.25, 0.5, 0.7] as const;
/** And how far along each side of it, in eighths of the way from its middle to a corner. */
const ALONG = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8, -8] as const;
const SIDES = [1, -1] as const;

/** A place for a name, and whether a cable passes through it: then it is the second best. */
interface Room {
  readonly box: Box;
  readonly isCrossed: boolean;
}

/** What of a pane names find their room in. */
interface Pane {
  readonly ground: Ground;
  readonly camera: Camera;
  readonly size: PaneSize;
  readonly scale: number;
}

const placedIn = (label: LabelShape, { x, y, w, h }: Box): PlacedLabel => ({
  label,
  xPx: x,
  yPx: y,
  widthPx: w,
  heightPx: h,
});

/** From edge to edge of two boxes, px. */
const gap = (one: Box, other: Box): number =>
  Math.hypot(
    Math.max(0, Math.abs(one.x - other.x) - (one.w + other.w) / 2),
    Math.max(0, Math.abs(one.y - other.y) - (one.h + other.h) / 2),
  );

/** All round its plate, the nearest first; clearly nearer to it than to any other. */
function roomsOf(label: LabelShape, { ground, camera, size, scale }: Pane): Room[] {
  const { xPx, yPx } = toScreen(camera, size, label.at);
  const own = sizeOf(label, scale);
  const plate = { x: xPx, y: yPx, w: 2 * ground.plate, h: 2 * ground.plate };
  const rooms: Room[] = [];
  const isNearToAnother = (box: Box): boolean => {
    const ownPx = gap(box, plate);
    // what stands right beside its plate can be meant for no other
    if (ownPx < GAP_PX + 1) return false;
    return ground.plates.some(
      (other) => (other.x !== xPx || other.y !== yPx) && gap(box, other) < CLEARLY_NEARER * ownPx,
    );
  };
  const add = (dx: number, dy: number): void => {
    const box = { x: xPx + dx, y: yPx + dy, ...own };
    if (!isInside(box, size) || ground.isTaken(box)) return;
    const around = grown(box, HALF_STROKE_PX);
    if (ground.isStriped(around)) return;
    if (isNearToAnother(box)) return;
    rooms.push({ box, isCrossed: ground.isCrossed(around) });
  };
  const besideIt = ground.plate + GAP_PX + own.w / 2;
  const underIt = ground.plate + GAP_PX + own.h / 2;
  for (const lines of OFF_LINES) {
    const offPx = lines * LINE_PX * scale;
    const [beside, under] = [offPx + besideIt, offPx + underIt];
    for (const along of ALONG) {
      for (const side of SIDES) {
        add((along / 8) * besideIt, side * under);
        add(side * beside, (along / 8) * underIt);
      }
    }
  }
  return rooms.toSorted((one, other) => Number(one.isCrossed) - Number(other.isCrossed));
}

/** Names by where they stand, and where else they could. */
class Names {
  readonly at = new Map<LabelShape, Box>();
  readonly #rooms = new Map<LabelShape, readonly Room[]>();

  constructor(
    private readonly pane: Pane,
    /** What makes way for no name. */
    private readonly fixed: readonly Box[],
  ) {}

  /** Where it has room by itself, else in the place of one that has room elsewhere; nowhere else. */
  place(label: LabelShape): void {
    const others: (readonly [box: Box, other: LabelShape])[] = [];
    for (const { box } of this.#roomsOf(label)) {
      if (this.fixed.some((one) => overlap(box, one))) continue;
      const [first, ...more] = this.#namesOn(box);
      if (first === undefined) {
        this.at.set(label, box);
        return;
      }
      if (more.length === 0) others.push([box, first]);
    }
    for (const [box, other] of others) {
      const elsewhere = this.#roomBeside(other, box);
      if (elsewhere === undefined) continue;
      this.at.set(other, elsewhere).set(label, box);
      return;
    }
  }

  #roomsOf(label: LabelShape): readonly Room[] {
    const known = this.#rooms.get(label) ?? roomsOf(label, this.pane);
    this.#rooms.set(label, known);
    return known;
  }

  #namesOn(box: Box): LabelShape[] {
    return [...this.at].flatMap(([label, other]) => (overlap(box, other) ? [label] : []));
  }

  /** Where a name could stand instead, were there another in that box. */
  #roomBeside(label: LabelShape, taken: Box): Box | undefined {
    const isFree = ({ box }: Room): boolean =>
      !overlap(box, taken) &&
      !this.fixed.some((one) => overlap(box, one)) &&
      this.#namesOn(box).every((other) => other === label);
    return this.#roomsOf(label).find(isFree)?.box;
  }
}

/** The labels with those lengths and names that find room after all. The same list where none does. */
export function withMoreLabels(
  first: readonly PlacedLabel[],
  { labels, ...things }: Drawing,
  camera: Camera,
  size: PaneSize,
  { keep, scale }: Wish,
): readonly PlacedLabel[] {
  const ground = groundOf(things, camera, size, scale);
  const pane = { ground, camera, size, scale };
  const isToStay = isFixed(keep);
  const placed = withMoreLengths(first, labels, [ground], camera, size, { keep, scale });
  const known = new Set(placed.map(({ label }) => label));
  const roomless = labels.filter(
    (label) => label.kind === 'fitting' && !known.has(label) && isSeen(toScreen(camera, size, label.at), size),
  );
  if (roomless.length === 0 || things.fittings.length > MOST_LOOKING_FURTHER) return placed;
  const fixed = placed.filter(isToStay);
  const isName = (one: PlacedLabel): boolean => one.label.kind === 'fitting' && !isToStay(one);
  const names = new Names(pane, fixed.map(boxOf));
  for (const one of placed.filter(isName)) names.at.set(one.label, boxOf(one));
  for (const label of roomless) names.place(label);
  const done = [...fixed, ...[...names.at].map(([label, box]) => placedIn(label, box))];
  // figures of runs make way for names
  for (const one of placed.filter((other) => !isName(other) && !isToStay(other))) {
    const taken = done.map(boxOf);
    const isFree = taken.every((box) => !overlap(box, boxOf(one)));
    const tries = isFree ? [boxOf(one)] : triesFor(one.label, false, camera, size, scale);
    const box = roomFor(tries, one.label, false, [ground], taken);
    if (box !== undefined) done.push(placedIn(one.label, box));
  }
  return done;
}
