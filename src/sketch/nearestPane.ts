/** Which pane a finger means that may be beside all of them, and what of it is seen there. */
import type { PaneId } from '../desk/desk.ts';
import type { ClientPoint } from './input/gestures.ts';
import { INSET_PX } from './nearer.ts';
import type { Panes } from './panes.ts';

const IDS: readonly PaneId[] = ['whole', 'bay'];

/** How far outside a length a place on it is, px; 0 inside. */
const beyond = (atPx: number, lengthPx: number): number => Math.max(-atPx, atPx - lengthPx, 0);

/** How far outside a pane a point is, px; 0 inside it, endless where it is not shown. */
function wayTo(panes: Panes, id: PaneId, point: ClientPoint): number {
  const size = panes.sizeOf(id);
  if (size === null) return Infinity;
  const { xPx, yPx } = panes.inPane(id, point);
  return Math.hypot(beyond(xPx, size.widthPx), beyond(yPx, size.heightPx));
}

/** The pane under the point, or the nearest to it; of equally near ones the one given. */
export function nearestPane(panes: Panes, point: ClientPoint, first: PaneId): PaneId {
  let [nearest, leastPx] = [first, wayTo(panes, first, point)];
  for (const id of IDS) {
    const wayPx = wayTo(panes, id, point);
    if (wayPx < leastPx) [nearest, leastPx] = [id, wayPx];
  }
  return nearest;
}

/** From where to where of a length a plate is seen whole; in its middle where there is no room for one. */
function held(atPx: number, lengthPx: number): number {
  const insetPx = Math.min(INSET_PX, lengthPx / 2);
  return Math.min(lengthPx - insetPx, Math.max(insetPx, atPx));
}

/** The point, or the nearest to it at which a plate is seen whole in that pane. */
export function heldInPane(panes: Panes, id: PaneId, point: ClientPoint): ClientPoint {
  const size = panes.sizeOf(id);
  if (size === null) return point;
  const { xPx, yPx } = panes.inPane(id, point);
  return { xPx: point.xPx + held(xPx, size.widthPx) - xPx, yPx: point.yPx + held(yPx, size.heightPx) - yPx };
}
