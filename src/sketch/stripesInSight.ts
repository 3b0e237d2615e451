/** The unprotected length beside whatever a pane shows of its stripe, however little, where it has found no other place. */
import { type PaneSize, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { LabelShape } from '../drawing/shapes.ts';
import { between } from '../geom/point.ts';
import { segmentsOf } from '../geom/polyline.ts';
import type { Point } from '../plan/schema.ts';
import { shareWithin } from './labelGround.ts';

/** The middles of what a pane shows of the lines that a label belongs to. */
export function middlesInSight({ along = [] }: LabelShape, camera: Camera, size: PaneSize): Point[] {
  const { widthPx: w, heightPx: h } = size;
  const pane = { x: w / 2, y: h / 2, w, h };
  return along
    .flatMap((line) => [...segmentsOf(line)])
    .flatMap(([a, b]) => {
      const share = shareWithin(pane, [toScreen(camera, size, a), toScreen(camera, size, b)]);
      return share < 0 ? [] : [between(a, b, share)];
    });
}
