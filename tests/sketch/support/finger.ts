/** Fingers, pens and a mouse for tests: pointer events made by hand, on an element of the page. */
import type { Clock } from '../../../src/sketch/input/clock.ts';

export interface Pointer {
  id?: number;
  type?: 'touch' | 'mouse' | 'pen';
  /** Width of the contact, css px. */
  width?: number;
  button?: number;
  alt?: boolean;
}

type Kind = 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel' | 'lostpointercapture';

export function send(element: HTMLElement, kind: Kind, x: number, y: number, pointer: Pointer = {}): void {
  const { id = 1, type = 'touch', width = 20, button = 0, alt = false } = pointer;
  const event = new PointerEvent(kind, {
    bubbles: true,
    pointerId: id,
    pointerType: type,
    clientX: x,
    clientY: y,
    button,
    width,
    height: width,
    altKey: alt,
  });
  element.dispatchEvent(event);
}

/** A finger that comes down, moves along the points and lifts at the last. */
export function drag(
  element: HTMLElement,
  points: readonly (readonly [number, number])[],
  pointer: Pointer = {},
): void {
  const [first = [0, 0], ...rest] = points;
  send(element, 'pointerdown', first[0], first[1], pointer);
  for (const [x, y] of rest) send(element, 'pointermove', x, y, pointer);
  const [x, y] = points.at(-1) ?? [0, 0];
  send(element, 'pointerup', x, y, pointer);
}

export function tap(element: HTMLElement, x: number, y: number, pointer: Pointer = {}): void {
  send(element, 'pointerdown', x, y, pointer);
  send(element, 'pointerup', x, y, pointer);
}

/** Time that a test turns by hand. */
export class HandClock implements Clock {
  #now = 0;
  #waiting: { at: number; run: () => void }[] = [];

  nowMs(): number {
    return this.#now;
  }

  after(ms: number, run: () => void): () => void {
    const entry = { at: this.#now + ms, run };
    this.#waiting.push(entry);
    return () => {
      this.#waiting = this.#waiting.filter((other) => other !== entry);
    };
  }

  /** Lets time go by, each thing in its own moment. */
  turn(ms: number): void {
    const end = this.#now + ms;
    for (;;) {
      const [next] = this.#waiting.filter(({ at }) => at <= end).sort((one, other) => one.at - other.at);
      if (next === undefined) break;
      this.#now = Math.max(this.#now, next.at);
      this.#waiting = this.#waiting.filter((other) => other !== next);
      next.run();
    }
    this.#now = end;
  }

  /** The page is busy meanwhile: what was due is late, all of it. */
  stall(ms: number): void {
    this.#now += ms;
    this.turn(0);
  }
}
