/** Camera maths of a pane. Sheet points are metres {xM, yM}, screen points css pixels from the pane's top left {xPx, yPx}. */
import { type Box, fitBox as fitInPane } from '../geom/box.ts';
import type { Point } from '../plan/schema.ts';
import type { Camera } from './desk.ts';

export interface ScreenPoint {
  xPx: number;
  yPx: number;
}

export interface PaneSize {
  widthPx: number;
  heightPx: number;
}

/** From a 12 m bench over a phone with room to spare, to one millimetre over eight pixels. */
export const MIN_PX_PER_M = 10;
export const MAX_PX_PER_M = 8000;
/** The sheet's own bound on coordinates, metres: the camera never looks past it. */
const EDGE_M = 100;

const clamp = (value: number, min: number, max: number) => Math.min(max, Math.max(min, value));

function bounded(camera: Camera): Camera {
  return {
    ...camera,
    centreXM: clamp(camera.centreXM, -EDGE_M, EDGE_M),
    centreYM: clamp(camera.centreYM, -EDGE_M, EDGE_M),
    pxPerM: clamp(camera.pxPerM, MIN_PX_PER_M, MAX_PX_PER_M),
  };
}

export function toScreen(camera: Camera, pane: PaneSize, point: Point): ScreenPoint {
  return {
    xPx: (point.xM - camera.centreXM) * camera.pxPerM + pane.widthPx / 2,
    yPx: (point.yM - camera.centreYM) * camera.pxPerM + pane.heightPx / 2,
  };
}

export function toSheet(camera: Camera, pane: PaneSize, point: ScreenPoint): Point {
  return {
    xM: (point.xPx - pane.widthPx / 2) / camera.pxPerM + camera.centreXM,
    yM: (point.yPx - pane.heightPx / 2) / camera.pxPerM + camera.centreYM,
  };
}

/** The camera that shows the whole box in the middle of the pane, with at least `marginPx` around it. */
export function fitBox(sheetId: string, box: Box, pane: PaneSize, marginPx: number): Camera {
  return bounded({ sheetId, ...fitInPane(box, { ...pane, marginPx }) });
}

/** Zooms by a factor, within limits; what lies under the anchor stays under it. */
export function zoomAt(camera: Camera, pane: PaneSize, anchor: ScreenPoint, factor: number): Camera {
  return pinch(camera, pane, anchor, anchor, factor);
}

/** Zooms by a factor, within limits, about the middle of the pane. */
export const zoomBy = (camera: Camera, factor: number): Camera =>
  bounded({ ...camera, pxPerM: camera.pxPerM * factor });

/** Moves the sheet with the finger, by css pixels. */
export function panBy(camera: Camera, dxPx: number, dyPx: number): Camera {
  return bounded({
    ...camera,
    centreXM: camera.centreXM - dxPx / camera.pxPerM,
    centreYM: camera.centreYM - dyPx / camera.pxPerM,
  });
}

/** Two fingers: what lay under their old midpoint comes under the new one, zoomed by the ratio of their distances. */
export function pinch(camera: Camera, pane: PaneSize, from: ScreenPoint, to: ScreenPoint, factor: number): Camera {
  const held = toSheet(camera, pane, from);
  const pxPerM = clamp(camera.pxPerM * factor, MIN_PX_PER_M, MAX_PX_PER_M);
  return bounded({
    ...camera,
    pxPerM,
    centreXM: held.xM - (to.xPx - pane.widthPx / 2) / pxPerM,
    centreYM: held.yM - (to.yPx - pane.heightPx / 2) / pxPerM,
  });
}
