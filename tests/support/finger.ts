import type { CDPSession, Locator, Page } from 'playwright-core';
import { drawn } from './reading.ts';

/** A place on the page, in CSS pixels from the top left of the viewport. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

type TouchType = 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel';

const MOVE_STEPS = 8;
/** Every page takes what has moved so far for a drag, CSS pixels. */
const SURELY_MOVED_PX = 24;
/** Half the width of what touches the glass, CSS pixels. */
const FINGERTIP_PX = 8;
const SIDE_OF_HAND_PX = 70;
const LONG_PRESS_MS = 800;

export function between(from: Place, to: Place, part: number): Place {
  return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
}

/** Where the first step of several surely is a drag: as far as it goes, or further. */
export function startOfSlide(from: Place, to: Place, steps: number): Place {
  const distancePx = Math.hypot(to.x - from.x, to.y - from.y);
  return between(from, to, Math.min(1, Math.max(1 / steps, SURELY_MOVED_PX / distancePx)));
}

/**
 * Fingers on the glass: touch events through the browser's own input path, so that the page gets the pointer events,
 * the hit testing and the cancelling a real screen gives it. Finger 1 unless told otherwise; each move goes in steps
 * with animation frames between them, as a hand's does.
 */
export class Finger {
  private readonly onGlass = new Map<number, Place>();

  private constructor(
    private readonly page: Page,
    private readonly session: CDPSession,
  ) {}

  static async on(page: Page): Promise<Finger> {
    return new Finger(page, await page.context().newCDPSession(page));
  }

  private async send(type: TouchType, touches: ReadonlyMap<number, Place>, radiusPx = FINGERTIP_PX): Promise<void> {
    const touchPoints = [...touches].map(([id, { x, y }]) => ({
      id,
      x,
      y,
      radiusX: radiusPx,
      radiusY: radiusPx,
      force: 1,
    }));
    await this.session.send('Input.dispatchTouchEvent', { type, touchPoints });
    // a move reaches the page with its next frame, and what the page makes of it is drawn with the one after
    await drawn(this.page);
  }

  private placeOf(id: number): Place {
    const place = this.onGlass.get(id);
    if (place === undefined) throw new Error(`Finger ${id} is not on the glass.`);
    return place;
  }

  async down(at: Place, id = 1): Promise<void> {
    this.onGlass.set(id, at);
    await this.send('touchStart', this.onGlass);
  }

  async move(to: Place, steps = MOVE_STEPS, id = 1): Promise<void> {
    const from = this.placeOf(id);
    for (let step = 1; step <= steps; step += 1) {
      this.onGlass.set(id, between(from, to, step / steps));
      await this.send('touchMove', this.onGlass);
    }
  }

  /** Lifts one finger; the others stay down. */
  async up(id = 1): Promise<void> {
    const place = this.placeOf(id);
    this.onGlass.delete(id);
    await this.send('touchEnd', new Map([[id, place]]));
  }

  /** The system takes the touch away (a palm, a call): the page must put back what was begun. */
  async cancel(): Promise<void> {
    this.onGlass.clear();
    await this.send('touchCancel', new Map());
  }

  /** The side of the hand comes to lie where the finger is. */
  async layHand(id = 1): Promise<void> {
    this.onGlass.set(id, { ...this.placeOf(id), y: this.placeOf(id).y + 1 });
    await this.send('touchMove', this.onGlass, SIDE_OF_HAND_PX);
  }

  /** The side of the hand comes down at once, as beside a pen. */
  async palm(at: Place, id = 1): Promise<void> {
    this.onGlass.set(id, at);
    await this.send('touchStart', this.onGlass, SIDE_OF_HAND_PX);
  }

  /** Down and up again at once: were a frame waited for between, a busy machine would make a long press of it. */
  async tap(at: Place): Promise<void> {
    const started = this.down(at);
    await Promise.all([started, this.up()]);
  }

  /**
   * Down and on its way at once, and there it stays: were a frame waited for before it has surely moved, a busy machine
   * would make a long press of it.
   */
  async slide(from: Place, to: Place, steps = MOVE_STEPS): Promise<void> {
    const first = startOfSlide(from, to, steps);
    const started = this.down(from);
    await Promise.all([started, this.move(first, 1)]);
    if (steps > 1) await this.move(to, steps - 1);
  }

  async drag(from: Place, to: Place, steps = MOVE_STEPS): Promise<void> {
    await this.slide(from, to, steps);
    await this.up();
  }

  /** Along a line of places, from the first to the last. */
  async stroke([first, second, ...rest]: readonly Place[]): Promise<void> {
    if (first === undefined || second === undefined) throw new Error('A stroke goes from somewhere to somewhere.');
    await this.slide(first, second, 1);
    for (const place of rest) await this.move(place, 1);
    await this.up();
  }

  /** Holds still for longer than a press may last; the wait is the gesture itself. */
  async longPress(at: Place, holdMs = LONG_PRESS_MS): Promise<void> {
    await this.down(at);
    await this.page.waitForTimeout(holdMs);
    await this.up();
  }

  /** Two fingers on a level line about `middle`, from `fromPx` to `toPx` apart. */
  async pinch(middle: Place, fromPx: number, toPx: number, steps = MOVE_STEPS): Promise<void> {
    await this.twoFingers(middle, middle, fromPx, toPx, steps);
  }

  /** Two fingers kept `apartPx` apart, moved together. */
  async panWithTwo(from: Place, to: Place, apartPx = 120, steps = MOVE_STEPS): Promise<void> {
    await this.twoFingers(from, to, apartPx, apartPx, steps);
  }

  private async twoFingers(from: Place, to: Place, fromPx: number, toPx: number, steps: number): Promise<void> {
    const place = (part: number) => {
      const middle = between(from, to, part);
      const half = (fromPx + (toPx - fromPx) * part) / 2;
      return [
        { x: middle.x - half, y: middle.y },
        { x: middle.x + half, y: middle.y },
      ] as const;
    };
    const [left, right] = place(0);
    await this.down(left, 1);
    await this.down(right, 2);
    for (let step = 1; step <= steps; step += 1) {
      const [one, two] = place(step / steps);
      this.onGlass.set(1, one);
      this.onGlass.set(2, two);
      await this.send('touchMove', this.onGlass);
    }
    await this.up(2);
    await this.up(1);
  }
}

/** A box as the browser tells it. */
interface Box extends Place {
  readonly width: number;
  readonly height: number;
}

export const centreOf = ({ x, y, width, height }: Box): Place => ({ x: x + width / 2, y: y + height / 2 });

/** The middle of the visible thing a locator finds, for a finger to go to. */
export async function middleOf(locator: Locator): Promise<Place> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error('What the finger should touch is not visible.');
  return centreOf(box);
}
