/**
 * Pointer events of the panes made into gestures. One input serves all panes, so that two fingers on two panes are
 * still two fingers. Nothing here knows of React, Konva or the plan.
 *
 *   idle -> pressed -> dragging -> idle
 *              |-> held (long press) -> idle
 *   one that drags a fitting off the shelf -> dragging
 *   any, second finger -> grasping (zoom and pan) until all fingers are up -> idle
 *   any, taken away -> spent until all fingers are up -> idle
 */
import type { Clock } from './clock.ts';
import { deviceOf, distancePx, type Finger, graspOf, isPalm, pointOf } from './fingers.ts';
import type { ClientPoint, Gesture } from './gestures.ts';
import { meaningOfWheel } from './wheel.ts';

export type InputState = 'idle' | 'pressed' | 'dragging' | 'held' | 'grasping' | 'spent';

/** A trembling or gloved finger moves this far without meaning to, css px. */
export const SLOP_PX = 8;
export const LONG_PRESS_MS = 500;
/** A page that hears of half a second later than this was busy when it was over, ms. */
const ON_TIME_MS = 16;
/** Then moves that wait to be heard have so long to be, ms. */
const LATE_MS = 100;
const MIDDLE_BUTTON = 1;

/** What a browser tells of one and the same move beside the move itself. */
const ECHOES = ['mousemove', 'touchmove'] as const;

export class Input<S extends string> {
  #state: InputState = 'idle';
  #fingers: Finger[] = [];
  #surface: S | null = null;
  /** Ends the hearing of moves. */
  #hearing: AbortController | null = null;
  #callOffLongPress: () => void = () => undefined;

  constructor(
    private readonly emit: (gesture: Gesture<S>) => void,
    private readonly clock: Clock,
  ) {}

  get state(): InputState {
    return this.#state;
  }

  /** Listens on a pane; answers how to stop. */
  attach(element: HTMLElement, surface: S): () => void {
    const down = (event: PointerEvent) => this.#down(event, element, surface);
    const up = (event: PointerEvent) => this.#up(event);
    const lost = (event: PointerEvent) => this.#lost(event.pointerId);
    const wheel = (event: WheelEvent) => this.#wheel(event, surface);
    const still = (event: Event) => event.preventDefault();
    const options = { passive: false } as const;
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', lost);
    element.addEventListener('lostpointercapture', lost);
    element.addEventListener('wheel', wheel, options);
    element.addEventListener('contextmenu', still);
    return () => {
      this.takeAway();
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', lost);
      element.removeEventListener('lostpointercapture', lost);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('contextmenu', still);
    };
  }

  /** The page was hidden or lost the focus: what is under way counts for nothing. */
  readonly takeAway = (): void => {
    this.#drop();
    this.#fingers = [];
    this.#rest();
  };

  /**
   * Takes over a finger that came down elsewhere, at `from`, and drags already: what it does from here on is heard as a
   * drag of this surface.
   */
  adopt(event: PointerEvent, element: HTMLElement, surface: S, from: ClientPoint): void {
    const finger = { pointerId: event.pointerId, device: deviceOf(event), from, at: pointOf(event) };
    this.#hold(finger, element);
    this.#surface = surface;
    this.#state = 'dragging';
    this.#tellDrag('dragStart', event, finger);
  }

  #down(event: PointerEvent, element: HTMLElement, surface: S): void {
    if (event.pointerType === 'mouse' && event.button !== 0 && event.button !== MIDDLE_BUTTON) return;
    if (isPalm(event) || this.#isUnderPen(event)) return;
    const point = pointOf(event);
    const device = deviceOf(event);
    // a pen beside a resting hand: the hand counts for nothing
    if (device === 'pen' && this.#fingers.length > 0) {
      this.#drop();
      this.#fingers = [];
    }
    this.#hold({ pointerId: event.pointerId, device, from: point, at: point }, element);
    const isFirst = this.#fingers.length === 1;
    if (isFirst) this.#surface = surface;
    if (!isFirst || (event.pointerType === 'mouse' && event.button === MIDDLE_BUTTON)) this.#grasp();
    else this.#press(event);
  }

  #hold(finger: Finger, element: HTMLElement): void {
    this.#fingers.push(finger);
    capture(element, finger.pointerId);
    if (this.#hearing !== null) return;
    this.#hearing = new AbortController();
    // before the rest of the page, which need not hear of it: a drag that is heard by all of it takes twice the time
    const options = { capture: true, passive: true, signal: this.#hearing.signal };
    window.addEventListener('pointermove', (event) => this.#move(event), options);
    for (const echo of ECHOES) window.addEventListener(echo, (event) => event.stopPropagation(), options);
  }

  #press(event: PointerEvent): void {
    this.#state = 'pressed';
    this.#tell('press', event);
    const dueMs = this.clock.nowMs() + LONG_PRESS_MS;
    const rested = () => {
      if (this.#state !== 'pressed') return;
      this.#state = 'held';
      this.#tell('longPress', event);
    };
    this.#callOffLongPress = this.clock.after(LONG_PRESS_MS, () => {
      // a page that was busy hears of the time before it hears that the finger has long moved on
      if (this.clock.nowMs() - dueMs < ON_TIME_MS) rested();
      else this.#callOffLongPress = this.clock.after(LATE_MS, rested);
    });
  }

  #move(event: PointerEvent): void {
    const finger = this.#fingers.find(({ pointerId }) => pointerId === event.pointerId);
    if (finger === undefined) return;
    event.stopPropagation();
    if (isPalm(event)) {
      this.#lost(event.pointerId);
      return;
    }
    const before = graspOf(this.#fingers);
    finger.at = pointOf(event);
    if (this.#state === 'grasping') {
      this.#pinch(before);
    } else if (this.#state === 'pressed' && distancePx(finger.from, finger.at) > SLOP_PX) {
      this.#callOffLongPress();
      this.#state = 'dragging';
      this.#tellDrag('dragStart', event, finger);
    } else if (this.#state === 'dragging') {
      this.#tellDrag('dragMove', event, finger);
    }
  }

  #up(event: PointerEvent): void {
    const finger = this.#fingers.find(({ pointerId }) => pointerId === event.pointerId);
    if (finger === undefined) return;
    this.#callOffLongPress();
    finger.at = pointOf(event);
    this.#forget(event.pointerId);
    if (this.#state === 'pressed') this.#finish(() => this.#tell('tap', event));
    else if (this.#state === 'held') this.#finish(() => this.#tell('release', event));
    else if (this.#state === 'dragging') this.#finish(() => this.#tellDrag('dragEnd', event, finger));
    else this.#rest();
  }

  /** Taken away by the system, or a palm. An ordinary lift also loses its capture, but is known no more by then. */
  #lost(pointerId: number): void {
    if (!this.#fingers.some((finger) => finger.pointerId === pointerId)) return;
    this.#forget(pointerId);
    if (this.#state !== 'grasping') {
      this.#drop();
      this.#state = 'spent';
    }
    this.#rest();
  }

  #wheel(event: WheelEvent, surface: S): void {
    event.preventDefault();
    if (this.#state !== 'idle') return;
    const meaning = meaningOfWheel(event);
    const from = pointOf(event);
    if (meaning.kind === 'zoom') {
      this.emit({ kind: 'pinch', surface, from, to: from, factor: meaning.factor });
    } else {
      const to = { xPx: from.xPx + meaning.dxPx, yPx: from.yPx + meaning.dyPx };
      this.emit({ kind: 'pinch', surface, from, to, factor: 1 });
    }
  }

  /** Two fingers never leave a mark: what one finger had begun is dropped, and the rest is zoom and pan. */
  #grasp(): void {
    if (this.#state !== 'grasping') this.#drop();
    this.#state = 'grasping';
  }

  #pinch(before: { centre: { xPx: number; yPx: number }; spreadPx: number }): void {
    const now = graspOf(this.#fingers);
    if (this.#surface === null) return;
    const factor = before.spreadPx > 0 && now.spreadPx > 0 ? now.spreadPx / before.spreadPx : 1;
    this.emit({ kind: 'pinch', surface: this.#surface, from: before.centre, to: now.centre, factor });
  }

  /** Calls off what one finger has begun. */
  #drop(): void {
    this.#callOffLongPress();
    const hasBegun = this.#state === 'pressed' || this.#state === 'dragging' || this.#state === 'held';
    if (hasBegun && this.#surface !== null) this.emit({ kind: 'cancel', surface: this.#surface });
    if (hasBegun) this.#state = 'spent';
  }

  /** Idle before the tool hears of the end: it may ask. */
  #finish(tell: () => void): void {
    this.#state = 'idle';
    tell();
    this.#rest();
  }

  #rest(): void {
    if (this.#fingers.length > 0) return;
    this.#hearing?.abort();
    this.#hearing = null;
    this.#state = 'idle';
    this.#surface = null;
  }

  #forget(pointerId: number): void {
    this.#fingers = this.#fingers.filter((finger) => finger.pointerId !== pointerId);
  }

  #isUnderPen(event: PointerEvent): boolean {
    return event.pointerType === 'touch' && this.#fingers.some(({ device }) => device === 'pen');
  }

  #tell(kind: 'press' | 'tap' | 'longPress' | 'release', event: PointerEvent): void {
    if (this.#surface === null) return;
    this.emit({ kind, surface: this.#surface, at: pointOf(event), device: deviceOf(event), alt: event.altKey });
  }

  #tellDrag(kind: 'dragStart' | 'dragMove' | 'dragEnd', event: PointerEvent, { from }: Finger): void {
    if (this.#surface === null) return;
    const common = { surface: this.#surface, at: pointOf(event), device: deviceOf(event), alt: event.altKey };
    this.emit({ ...common, kind, from });
  }
}

/** So that a finger that leaves the pane is still heard. A pointer made up by a script cannot be captured. */
function capture(element: HTMLElement, pointerId: number): void {
  try {
    element.setPointerCapture(pointerId);
  } catch {
    // not an active pointer: its events reach the pane anyway as long as it stays on it
  }
}
