/** Where the two panes look: fitted until someone moves them, then left alone. */

import { fitBox, type PaneSize, pinch } from '../desk/camera.ts';
import type { Camera, Desk, PaneId } from '../desk/desk.ts';
import { drawOutline } from '../drawing/outline.ts';
import type { Bounds } from '../drawing/shapes.ts';
import type { Point, Sheet } from '../plan/schema.ts';
import type { CloseUp } from './closeUp.ts';
import { INSET_PX, nearerCamera, seesStretches } from './nearer.ts';

const MARGIN_PX = 10;
/** Kept free for the pane's title, so that it covers no corner of the vehicle. */
const TITLE_PX = 34;

/** The camera that shows all of what the pane is for; `closeUp`: what the nearer one looks at. */
export function fittedCamera(sheet: Sheet, pane: PaneId, size: PaneSize, closeUp: CloseUp | null): Camera {
  const { bounds } = drawOutline(sheet);
  const below = { ...size, heightPx: Math.max(1, size.heightPx - TITLE_PX) };
  const near = pane === 'bay' ? closeUp : null;
  const camera = fitBox(sheet.id, near?.bounds ?? bounds, below, MARGIN_PX);
  const nearer = near === null ? null : nearerCamera(camera, below, near, { outline: sheet.outline, vehicle: bounds });
  const { centreYM, pxPerM } = nearer ?? camera;
  const centred = { ...(nearer ?? camera), centreYM: centreYM - TITLE_PX / 2 / pxPerM };
  return nearer === null && near?.of === 'bay' ? onwards(centred, size, near.bounds) : centred;
}

/** Room to spare goes to what lies behind the firewall, where the run leads, not to the road before the nose. */
function onwards(camera: Camera, size: PaneSize, { minXM }: Bounds): Camera {
  const leftM = Math.min(camera.centreXM - minXM, size.widthPx / 2 / camera.pxPerM);
  const spareM = size.widthPx / 2 / camera.pxPerM - leftM;
  return { ...camera, centreXM: camera.centreXM + Math.max(0, spareM - MARGIN_PX / camera.pxPerM) };
}

/** The camera in use, as long as it shows what the fitted one is for about as well: what is seen does not jump. */
export function keptOrFitted(camera: Camera, fitted: Camera, size: PaneSize, closeUp: CloseUp | null): Camera {
  const below = { ...size, heightPx: Math.max(1, size.heightPx - TITLE_PX) };
  const seen = { ...camera, centreYM: camera.centreYM + TITLE_PX / 2 / camera.pxPerM };
  const isKept = camera.sheetId === fitted.sheetId && seesStretches(seen, fitted, below, closeUp?.stretches ?? []);
  return isKept ? camera : fitted;
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

/** The camera moved as little as shows the place; the same one when it is visible. */
export function cameraShowing(camera: Camera, size: PaneSize, at: Point): Camera {
  const halfXM = Math.max(0, size.widthPx / 2 - INSET_PX) / camera.pxPerM;
  const halfYM = Math.max(0, size.heightPx / 2 - INSET_PX) / camera.pxPerM;
  const centreXM = Math.min(at.xM + halfXM, Math.max(at.xM - halfXM, camera.centreXM));
  const centreYM = Math.min(at.yM + halfYM, Math.max(at.yM - halfYM, camera.centreYM));
  const isVisible = centreXM === camera.centreXM && centreYM === camera.centreYM;
  return isVisible ? camera : { ...camera, centreXM, centreYM };
}
