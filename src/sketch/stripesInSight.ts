/** The unprotected length beside whatever a pane shows of its stripe, however little, where it has found no other place. */
import { type PaneSize, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { LabelShape } from '../drawing/shapes.ts';
import { between } from '../geom/point.ts';
import { segmentsOf } from '../geom/polyline.ts';
import type { Point } from '../plan/schema.ts';
import { type Ground, overlap, shareWithin } from './labelGround.ts';
import { boxOf, type PlacedLabel, roomFor, triesFor, type Wish } from './labelLayout.ts';

/** The middles of what a pane shows of the lines that a label belongs to. */
function middlesInSight({ along = [] }: LabelShape, camera: Camera, size: PaneSize): Point[] {
  const { widthPx: w, heightPx: h } = size;
  const pane = { x: w / 2, y: h / 2, w, h };
  const middles: Point[] = [];
  for (const line of along) {
    for (const [a, b] of segmentsOf(line)) {
      const share = shareWithin(pane, [toScreen(camera, size, a), toScreen(camera, size, b)]);
      if (share >= 0) middles.push(between(a, b, share));
    }
  }
  return middles;
}

/** What makes way for nothing: a length, and what is picked out. */
export const isFixed =
  (keep: string | null) =>
  ({ label }: PlacedLabel): boolean =>
    label.kind === 'hazard' || label.id === keep;

/**
 * The labels with the lengths of stripes of which only a part is seen, away from every place they usually have; names
 * and figures make way for them. The same list where there are none, as in most frames of a drag: then no line is looked
 * along.
 */
export function withMoreLengths(
  placed: readonly PlacedLabel[],
  labels: readonly LabelShape[],
  grounds: readonly Ground[],
  camera: Camera,
  size: PaneSize,
  { keep, scale }: Wish,
): readonly PlacedLabel[] {
  const lengths: PlacedLabel[] = [];
  const isToStay = isFixed(keep);
  for (const label of labels) {
    if (label.kind !== 'hazard' || placed.some((one) => one.label === label)) continue;
    const [at, ...elsewhere] = middlesInSight(label, camera, size);
    if (at === undefined) continue;
    const tries = triesFor({ ...label, at, elsewhere }, true, camera, size, scale);
    const taken = [...placed.filter(isToStay), ...lengths].map(boxOf);
    const box = roomFor(tries, label, true, grounds, taken);
    if (box !== undefined) lengths.push({ label, xPx: box.x, yPx: box.y, widthPx: box.w, heightPx: box.h });
  }
  if (lengths.length === 0) return placed;
  const makesWay = (one: PlacedLabel): boolean =>
    !isToStay(one) && lengths.some((length) => overlap(boxOf(length), boxOf(one)));
  return [...lengths, ...placed.filter((one) => !makesWay(one))];
}
