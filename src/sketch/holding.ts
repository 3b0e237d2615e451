/** Follows what a finger holds to the edge of its pane, frame by frame. */
import type { PaneId } from '../desk/desk.ts';
import type { Frames } from '../desk/frames.ts';
import { drawOutline } from '../drawing/outline.ts';
import { setCamera } from './cameras.ts';
import { DWELL_MS, edgeSpeed, scrolled } from './edgeScroll.ts';
import type { Clock } from './input/clock.ts';
import type { ClientPoint, Gesture } from './input/gestures.ts';
import type { Panes } from './panes.ts';
import type { Hand } from './tools/hand.ts';
import type { HandState } from './tools/state.ts';
import type { Workbench } from './tools/workbench.ts';

type Drag = Extract<Gesture<PaneId>, { kind: 'dragStart' | 'dragMove' | 'dragEnd' }>;

/** Something hangs at the finger that may have to go where the pane does not reach. */
const holds = (state: HandState): boolean =>
  state.name === 'move.draggingFitting' ||
  state.name === 'move.draggingBend' ||
  state.name === 'move.draggingEnd' ||
  state.name === 'place.aiming' ||
  (state.name === 'run.drawing' && state.stroke.length > 0);

export class Holding {
  #last: Drag | null = null;
  #callOff: (() => void) | null = null;
  /** Since when the finger has been in the zone of this pane, ms. */
  #inZone: { pane: PaneId; sinceMs: number } | null = null;
  #steppedMs = 0;

  constructor(
    private readonly bench: Workbench,
    private readonly hand: Hand,
    private readonly clock: Clock,
    private readonly frames: Frames,
  ) {}

  /** Hears every gesture after the hand has. */
  heard(gesture: Gesture<PaneId>): void {
    const isDrag = gesture.kind === 'dragStart' || gesture.kind === 'dragMove';
    if (!isDrag || !holds(this.hand.store.getState().state)) {
      this.rest();
      return;
    }
    this.#last = gesture;
    if (this.#callOff === null && this.#speedNow() !== null) this.#next();
  }

  rest(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.#last = null;
    this.#inZone = null;
  }

  #next(): void {
    this.#callOff = this.frames(() => {
      this.#callOff = null;
      this.#step();
    });
  }

  /** Where the finger is in a pane's zone, and how fast that is; null where nothing is to move. */
  #speedNow(): { pane: PaneId; speed: ReturnType<typeof edgeSpeed> } | null {
    const drag = this.#last;
    if (drag === null) return null;
    const { panes } = this.bench;
    const pane = panes.at(drag.at);
    const size = pane === null ? null : panes.sizeOf(pane);
    if (pane === null || size === null) return null;
    const speed = edgeSpeed(panes.inPane(pane, drag.at), fromIn(panes, pane, drag.from), size);
    return speed.xPxPerS === 0 && speed.yPxPerS === 0 ? null : { pane, speed };
  }

  #step(): void {
    const drag = this.#last;
    const now = this.#speedNow();
    if (drag === null || now === null || !holds(this.hand.store.getState().state)) {
      this.#inZone = null;
      return;
    }
    const nowMs = this.clock.nowMs();
    if (this.#inZone?.pane !== now.pane) this.#inZone = { pane: now.pane, sinceMs: nowMs };
    const stepMs = nowMs - this.#steppedMs;
    this.#steppedMs = nowMs;
    if (nowMs - this.#inZone.sinceMs >= DWELL_MS) this.#scroll(now.pane, now.speed, stepMs, drag);
    this.#next();
  }

  #scroll(pane: PaneId, speed: ReturnType<typeof edgeSpeed>, stepMs: number, drag: Drag): void {
    const { desk } = this.bench;
    const { cameras, plan } = desk.getState();
    const camera = cameras[pane];
    const sheet = plan.sheets.find(({ id }) => id === camera?.sheetId);
    if (camera === null || sheet === undefined) return;
    setCamera(desk, pane, scrolled(camera, speed, stepMs, drawOutline(sheet).bounds));
    this.hand.tell({ ...drag, kind: 'dragMove' });
  }
}

/** Where in a pane a drag began; null when it began elsewhere. */
function fromIn(panes: Panes, pane: PaneId, from: ClientPoint): { xPx: number; yPx: number } | null {
  return panes.at(from) === pane ? panes.inPane(pane, from) : null;
}
