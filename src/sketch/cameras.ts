/** Where the two panes look: fitted until someone moves them, then left alone. */

import { fitBox, type PaneSize, pinch } from '../desk/camera.ts';
import type { Camera, Desk, PaneId } from '../desk/desk.ts';
import { drawOutline } from '../drawing/outline.ts';
import type { Point, Sheet } from '../plan/schema.ts';
import type { CloseUp } from './closeUp.ts';

const MARGIN_PX = 10;
/** Kept free for the pane's title, so that it covers no corner of the vehicle. */
const TITLE_PX = 34;

/** The camera that shows all of what the pane is for; `closeUp`: what the nearer one looks at. */
export function fittedCamera(sheet: Sheet, pane: PaneId, size: PaneSize, closeUp: CloseUp | null): Camera {
  const box = pane === 'bay' && closeUp !== null ? closeUp.bounds : drawOutline(sheet).bounds;
  const below = { ...size, heightPx: Math.max(1, size.heightPx - TITLE_PX) };
  const camera = fitBox(sheet.id, box, below, MARGIN_PX);
  const centred = { ...camera, centreYM: camera.centreYM - TITLE_PX / 2 / camera.pxPerM };
  if (pane !== 'bay' || closeUp?.of !== 'bay') return centred;
  // room to spare goes to what lies behind the firewall, where the run leads, not to the road before the nose
  const leftM = Math.min(centred.centreXM - box.minXM, size.widthPx / 2 / camera.pxPerM);
  const spareM = size.widthPx / 2 / camera.pxPerM - leftM;
  return { ...centred, centreXM: centred.centreXM + Math.max(0, spareM - MARGIN_PX / camera.pxPerM) };
}

/** The camera of a pane that has changed its size at the right or at the foot: nothing moves on the screen. */
export function resizedCamera(camera: Camera, before: PaneSize, size: PaneSize): Camera {
  const centreXM = camera.centreXM + (size.widthPx - before.widthPx) / 2 / camera.pxPerM;
  const centreYM = camera.centreYM + (size.heightPx - before.heightPx) / 2 / camera.pxPerM;
  return { ...camera, centreXM, centreYM };
}

export function setCamera(desk: Desk, pane: PaneId, camera: Camera): void {
  desk.setState((state) => ({ cameras: { ...state.cameras, [pane]: camera } }));
}

/** Zoom and pan of two fingers or a wheel, in px of the pane. */
export function moveCamera(
  desk: Desk,
  pane: PaneId,
  size: PaneSize,
  grip: { from: { xPx: number; yPx: number }; to: { xPx: number; yPx: number }; factor: number },
): void {
  const camera = desk.getState().cameras[pane];
  if (camera !== null) setCamera(desk, pane, pinch(camera, size, grip.from, grip.to, grip.factor));
}

/** How far inside the edge a place has to be to count as visible, px. */
const INSET_PX = 40;

/** The camera moved as little as shows the place; the same one when it is visible. */
export function cameraShowing(camera: Camera, size: PaneSize, at: Point): Camera {
  const halfXM = Math.max(0, size.widthPx / 2 - INSET_PX) / camera.pxPerM;
  const halfYM = Math.max(0, size.heightPx / 2 - INSET_PX) / camera.pxPerM;
  const centreXM = Math.min(at.xM + halfXM, Math.max(at.xM - halfXM, camera.centreXM));
  const centreYM = Math.min(at.yM + halfYM, Math.max(at.yM - halfYM, camera.centreYM));
  const isVisible = centreXM === camera.centreXM && centreYM === camera.centreYM;
  return isVisible ? camera : { ...camera, centreXM, centreYM };
}
