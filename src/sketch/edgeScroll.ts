/**
 * While something is held near the edge of a pane the sheet moves under it, faster the nearer the edge: what lies
 * outside can be reached without letting go. Nothing is held still in the sheet: the finger is told of again with each
 * step, so that what it holds stays under it.
 */
import { type PaneSize, panBy } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { Bounds } from '../drawing/shapes.ts';

/** Width of the zone along each edge, px: a fingertip. */
export const ZONE_PX = 48;
/** At the very edge, px per second: the width of a tablet's pane in under a second. */
export const FASTEST_PX_PER_S = 900;
/** A finger on its way to the other pane passes the edge in less than this, ms. */
export const DWELL_MS = 250;
/** A page that was asleep for long does not leap, ms. */
const LONGEST_STEP_MS = 50;

interface InPane {
  xPx: number;
  yPx: number;
}

/** How fast along one axis, -1 to 1; what was taken hold of in the zone has to go further out first. */
function share(atPx: number, fromPx: number | null, lengthPx: number): number {
  const zone = (startPx: number | null) =>
    Math.max(0, Math.min(ZONE_PX, lengthPx / 4, startPx === null ? ZONE_PX : startPx - ZONE_PX / 4));
  const [low, high] = [zone(fromPx), zone(fromPx === null ? null : lengthPx - fromPx)];
  if (atPx < low) return -Math.min(1, (low - atPx) / low);
  if (lengthPx - atPx < high) return Math.min(1, (high - (lengthPx - atPx)) / high);
  return 0;
}

/**
 * Px per second by which the view moves over the sheet, the square of how deep in the zone the finger is. `from` is
 * where the drag began, null when that was in another pane. Outside the pane it is at rest.
 */
export function edgeSpeed(at: InPane, from: InPane | null, size: PaneSize): { xPxPerS: number; yPxPerS: number } {
  const isInside = at.xPx >= 0 && at.yPx >= 0 && at.xPx <= size.widthPx && at.yPx <= size.heightPx;
  if (!isInside) return { xPxPerS: 0, yPxPerS: 0 };
  const speed = (part: number) => Math.sign(part) * part * part * FASTEST_PX_PER_S;
  return {
    xPxPerS: speed(share(at.xPx, from?.xPx ?? null, size.widthPx)),
    yPxPerS: speed(share(at.yPx, from?.yPx ?? null, size.heightPx)),
  };
}

/** The camera after so long at that speed; its middle goes no further out than the vehicle does. */
export function scrolled(
  camera: Camera,
  speed: { xPxPerS: number; yPxPerS: number },
  stepMs: number,
  { minXM, minYM, maxXM, maxYM }: Bounds,
): Camera {
  const s = Math.min(stepMs, LONGEST_STEP_MS) / 1000;
  const moved = panBy(camera, -speed.xPxPerS * s, -speed.yPxPerS * s);
  // a view that is further out already may come back, and goes no further
  const within = (now: number, next: number, min: number, max: number) =>
    next > now ? Math.max(now, Math.min(next, max)) : Math.min(now, Math.max(next, min));
  return {
    ...moved,
    centreXM: within(camera.centreXM, moved.centreXM, minXM, maxXM),
    centreYM: within(camera.centreYM, moved.centreYM, minYM, maxYM),
  };
}
