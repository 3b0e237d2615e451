/** What labels keep clear of: plates, cables, stripes, and what the pane itself writes. In px of the pane. */
import { type PaneSize, type ScreenPoint, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { halfPlatePx } from '../drawing/fittings.ts';
import { pointsOfFlat } from '../drawing/runs.ts';
import type { Drawing } from '../drawing/shapes.ts';
import { Tiles } from './tiles.ts';

/** By its middle. */
export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

type Segment = readonly [a: ScreenPoint, b: ScreenPoint];

export const grown = (box: Box, byPx: number): Box => ({ ...box, w: box.w + 2 * byPx, h: box.h + 2 * byPx });

export const overlap = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) * 2 < a.w + b.w && Math.abs(a.y - b.y) * 2 < a.h + b.h;

/**
 * Where along a segment the middle of what lies in the box is, 0 to 1; -1 where it passes by. The part of it between
 * left and right and the part between top and bottom have something in common. Asked thousands of times a frame, so that
 * it makes nothing.
 */
export function shareWithin(box: Box, [a, b]: Segment): number {
  const halfW = box.w / 2;
  const halfH = box.h / 2;
  // seen from the middle of the box
  const ax = a.xPx - box.x;
  const ay = a.yPx - box.y;
  const bx = b.xPx - box.x;
  const by = b.yPx - box.y;
  // beside it with both ends: most are
  if (Math.min(ax, bx) >= halfW || Math.max(ax, bx) <= -halfW) return -1;
  if (Math.min(ay, by) >= halfH || Math.max(ay, by) <= -halfH) return -1;
  const dx = bx - ax;
  const dy = by - ay;
  // from where to where along it, 0 to 1, it is between left and right, and between top and bottom
  const x1 = dx === 0 ? 0 : (-halfW - ax) / dx;
  const x2 = dx === 0 ? 1 : (halfW - ax) / dx;
  const y1 = dy === 0 ? 0 : (-halfH - ay) / dy;
  const y2 = dy === 0 ? 1 : (halfH - ay) / dy;
  const enters = Math.max(0, Math.min(x1, x2), Math.min(y1, y2));
  const leaves = Math.min(1, Math.max(x1, x2), Math.max(y1, y2));
  return enters < leaves ? (enters + leaves) / 2 : -1;
}

export const segmentsOf = (line: readonly ScreenPoint[]): Segment[] =>
  line.flatMap((b, index) => {
    const a = line[index - 1];
    return a === undefined ? [] : [[a, b] as const];
  });

const boxAround = ([a, b]: Segment): Box => ({
  x: (a.xPx + b.xPx) / 2,
  y: (a.yPx + b.yPx) / 2,
  w: Math.abs(a.xPx - b.xPx),
  h: Math.abs(a.yPx - b.yPx),
});

/** What the pane itself writes: its title above left, its scale below right. As large as they come, px. */
const TITLE = { w: 180, h: 52 } as const;
const SCALE = { w: 220, h: 36 } as const;

const corners = ({ widthPx, heightPx }: PaneSize, scale: number): Box[] => [
  { x: (TITLE.w / 2) * scale, y: (TITLE.h / 2) * scale, w: TITLE.w * scale, h: TITLE.h * scale },
  { x: widthPx - (SCALE.w / 2) * scale, y: heightPx - (SCALE.h / 2) * scale, w: SCALE.w * scale, h: SCALE.h * scale },
];

export type Things = Pick<Drawing, 'fittings' | 'runs' | 'hazards'>;

/** So few are gone through as a list. */
const FEW = 24;

/** Things by where they lie: a few in a list, many in tiles. */
function laid<T>(things: readonly T[], boxOf: (thing: T) => Box, size: PaneSize): Pick<Tiles<T>, 'some'> {
  if (things.length <= FEW) return { some: (_, meets) => things.some(meets) };
  const tiles = new Tiles<T>(size);
  for (const thing of things) tiles.add(boxOf(thing), thing);
  return tiles;
}

export class Ground {
  readonly plates: readonly Box[];
  /** Half a plate. */
  readonly plate: number;
  readonly #boxes: Pick<Tiles<Box>, 'some'>;
  readonly #cables: Pick<Tiles<Segment>, 'some'>;
  readonly #stripes: readonly Segment[];

  constructor(things: Things, camera: Camera, size: PaneSize, scale: number) {
    const lineOf = (flat: readonly number[]) =>
      segmentsOf(pointsOfFlat(flat).map((point) => toScreen(camera, size, point)));
    const plate = halfPlatePx(camera.pxPerM);
    this.plate = plate;
    this.plates = things.fittings.map(({ at }): Box => {
      const { xPx, yPx } = toScreen(camera, size, at);
      return { x: xPx, y: yPx, w: 2 * plate, h: 2 * plate };
    });
    this.#boxes = laid([...this.plates, ...corners(size, scale)], (box) => box, size);
    this.#cables = laid(
      things.runs.flatMap(({ points }) => lineOf(points)),
      boxAround,
      size,
    );
    this.#stripes = things.hazards.flatMap(({ points }) => lineOf(points));
  }

  isTaken(box: Box): boolean {
    return this.#boxes.some(box, (other) => overlap(box, other));
  }

  /** Whether a cable passes through the box. */
  isCrossed(box: Box): boolean {
    return this.#cables.some(box, (segment) => shareWithin(box, segment) >= 0);
  }

  isStriped(box: Box): boolean {
    return this.#stripes.some((segment) => shareWithin(box, segment) >= 0);
  }
}

export const groundOf = (things: Things, camera: Camera, size: PaneSize, scale: number): Ground =>
  new Ground(things, camera, size, scale);
