import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Gesture } from '../../src/sketch/input/gestures.ts';
import { Input, LONG_PRESS_MS, SLOP_PX } from '../../src/sketch/input/input.ts';
import { drag, HandClock, send, tap } from './support/finger.ts';

let element: HTMLElement;
let other: HTMLElement;
let input: Input<'left' | 'right'>;
let clock: HandClock;
let heard: Gesture<'left' | 'right'>[];

const kinds = () => heard.map(({ kind }) => kind);

beforeEach(() => {
  heard = [];
  clock = new HandClock();
  input = new Input((gesture) => heard.push(gesture), clock);
  element = document.createElement('div');
  other = document.createElement('div');
  document.body.append(element, other);
  input.attach(element, 'left');
  input.attach(other, 'right');
});
// a finger that a test leaves on the glass is none of the next one's
afterEach(() => input.takeAway());

describe('one finger', () => {
  it('that comes down and lifts is a press and a tap', () => {
    send(element, 'pointerdown', 10, 20);
    expect(input.state).toBe('pressed');
    send(element, 'pointerup', 10, 20);
    expect(input.state).toBe('idle');
    expect(heard).toMatchObject([
      { kind: 'press', surface: 'left', at: { xPx: 10, yPx: 20 }, device: 'touch' },
      { kind: 'tap', surface: 'left', at: { xPx: 10, yPx: 20 } },
    ]);
  });

  it('moves unheard by the rest of the page while it is down, and only then', () => {
    const page = vi.fn();
    for (const type of ['pointermove', 'mousemove', 'touchmove']) document.body.addEventListener(type, page);
    const echo = () => {
      for (const type of ['mousemove', 'touchmove']) element.dispatchEvent(new Event(type, { bubbles: true }));
    };
    send(element, 'pointermove', 5, 5);
    echo();
    expect(page).toHaveBeenCalledTimes(3);
    send(element, 'pointerdown', 10, 10);
    send(element, 'pointermove', 60, 10);
    echo();
    // another pointer, which is none of ours
    send(element, 'pointermove', 60, 10, { id: 9 });
    expect(page).toHaveBeenCalledTimes(4);
    send(element, 'pointerup', 60, 10);
    expect(kinds()).toEqual(['press', 'dragStart', 'dragEnd']);
    send(element, 'pointermove', 5, 5);
    echo();
    expect(page).toHaveBeenCalledTimes(7);
  });

  it('that trembles within the slop still taps', () => {
    drag(element, [
      [10, 10],
      [10 + SLOP_PX, 10],
      [6, 12],
    ]);
    expect(kinds()).toEqual(['press', 'tap']);
  });

  it('that moves beyond the slop drags from where it came down', () => {
    send(element, 'pointerdown', 10, 10);
    send(element, 'pointermove', 10 + SLOP_PX + 1, 10);
    expect(input.state).toBe('dragging');
    send(element, 'pointermove', 40, 10);
    send(element, 'pointerup', 50, 10);
    expect(kinds()).toEqual(['press', 'dragStart', 'dragMove', 'dragEnd']);
    expect(heard[1]).toMatchObject({ from: { xPx: 10, yPx: 10 }, at: { xPx: 19, yPx: 10 } });
    expect(heard[3]).toMatchObject({ from: { xPx: 10, yPx: 10 }, at: { xPx: 50, yPx: 10 } });
    expect(input.state).toBe('idle');
  });

  it.each([20, 60, 400])(
    'that moved while the page was busy drags, however late the page hears of both: %i ms',
    (late) => {
      send(element, 'pointerdown', 10, 10);
      clock.stall(LONG_PRESS_MS + late);
      expect(kinds()).toEqual(['press']);
      send(element, 'pointermove', 40, 10);
      expect(kinds()).toEqual(['press', 'dragStart']);
      clock.turn(LONG_PRESS_MS);
      send(element, 'pointerup', 40, 10);
      expect(kinds()).toEqual(['press', 'dragStart', 'dragEnd']);
    },
  );

  it('that rested while the page was busy is a long press all the same', () => {
    send(element, 'pointerdown', 10, 10);
    clock.stall(LONG_PRESS_MS + 400);
    clock.turn(100);
    expect(kinds()).toEqual(['press', 'longPress']);
  });

  it('that lifts before a busy page has heard of its rest is a tap', () => {
    send(element, 'pointerdown', 10, 10);
    clock.stall(LONG_PRESS_MS + 400);
    send(element, 'pointerup', 10, 10);
    clock.turn(1_000);
    expect(kinds()).toEqual(['press', 'tap']);
  });

  it('that rests half a second is a long press, once, and no tap after it', () => {
    send(element, 'pointerdown', 10, 10);
    clock.turn(LONG_PRESS_MS - 1);
    expect(kinds()).toEqual(['press']);
    clock.turn(1);
    expect(input.state).toBe('held');
    send(element, 'pointermove', 12, 10);
    send(element, 'pointerup', 12, 10);
    clock.turn(LONG_PRESS_MS);
    expect(kinds()).toEqual(['press', 'longPress', 'release']);
  });

  it('that drags or has lifted never becomes a long press', () => {
    send(element, 'pointerdown', 10, 10);
    send(element, 'pointermove', 60, 10);
    clock.turn(LONG_PRESS_MS);
    send(element, 'pointerup', 60, 10);
    tap(element, 10, 10);
    clock.turn(LONG_PRESS_MS);
    expect(kinds()).not.toContain('longPress');
  });

  it('says whether Alt is held, and which device it is', () => {
    tap(element, 1, 1, { type: 'mouse', alt: true });
    expect(heard[1]).toMatchObject({ kind: 'tap', device: 'mouse', alt: true });
  });
});

describe('taken away', () => {
  it.each(['pointercancel', 'lostpointercapture'] as const)(
    '%s during a drag cancels it, and the lift is not heard',
    (kind) => {
      send(element, 'pointerdown', 10, 10);
      send(element, 'pointermove', 60, 10);
      send(element, kind, 60, 10);
      send(element, 'pointerup', 60, 10);
      expect(kinds()).toEqual(['press', 'dragStart', 'cancel']);
      expect(input.state).toBe('idle');
    },
  );

  it('the capture that is lost after an ordinary lift changes nothing', () => {
    tap(element, 10, 10);
    send(element, 'lostpointercapture', 10, 10);
    expect(kinds()).toEqual(['press', 'tap']);
  });

  it('a page that loses the focus cancels, and fingers still down are not heard', () => {
    send(element, 'pointerdown', 10, 10);
    input.takeAway();
    send(element, 'pointermove', 60, 10);
    send(element, 'pointerup', 60, 10);
    clock.turn(LONG_PRESS_MS);
    expect(kinds()).toEqual(['press', 'cancel']);
  });

  it('nothing is cancelled when nothing was begun', () => {
    input.takeAway();
    expect(heard).toEqual([]);
  });
});

describe('two fingers', () => {
  it('drop what one had begun, and zoom about their middle', () => {
    send(element, 'pointerdown', 100, 100);
    send(element, 'pointermove', 130, 100);
    send(element, 'pointerdown', 230, 100, { id: 2 });
    expect(input.state).toBe('grasping');
    send(element, 'pointermove', 330, 100, { id: 2 });
    expect(kinds()).toEqual(['press', 'dragStart', 'cancel', 'pinch']);
    expect(heard[3]).toMatchObject({ factor: 2, from: { xPx: 180, yPx: 100 }, to: { xPx: 230, yPx: 100 } });
  });

  it('leave no mark: no tap, no drag, until all fingers are up', () => {
    send(element, 'pointerdown', 100, 100);
    send(element, 'pointerdown', 200, 100, { id: 2 });
    send(element, 'pointerup', 200, 100, { id: 2 });
    send(element, 'pointermove', 150, 120);
    expect(input.state).toBe('grasping');
    send(element, 'pointerup', 150, 120);
    expect(kinds()).toEqual(['press', 'cancel', 'pinch']);
    expect(heard[2]).toMatchObject({ factor: 1, from: { xPx: 100, yPx: 100 }, to: { xPx: 150, yPx: 120 } });
    expect(input.state).toBe('idle');
    tap(element, 10, 10);
    expect(kinds().slice(3)).toEqual(['press', 'tap']);
  });

  it('are two fingers on two panes as well', () => {
    send(element, 'pointerdown', 100, 100);
    send(other, 'pointerdown', 300, 100, { id: 2 });
    send(other, 'pointerup', 300, 100, { id: 2 });
    send(element, 'pointerup', 100, 100);
    expect(kinds()).toEqual(['press', 'cancel']);
  });

  it('one of them taken away leaves the other panning', () => {
    send(element, 'pointerdown', 100, 100);
    send(element, 'pointerdown', 200, 100, { id: 2 });
    send(element, 'pointercancel', 200, 100, { id: 2 });
    send(element, 'pointermove', 110, 100);
    expect(heard.at(-1)).toMatchObject({ kind: 'pinch', factor: 1 });
  });
});

describe('a hand that rests', () => {
  it('is no finger: a contact as wide as a palm is not heard', () => {
    drag(
      element,
      [
        [10, 10],
        [80, 10],
      ],
      { width: 120 },
    );
    expect(heard).toEqual([]);
  });

  it('takes its drag with it when the contact grows into a palm', () => {
    send(element, 'pointerdown', 10, 10);
    send(element, 'pointermove', 60, 10);
    send(element, 'pointermove', 70, 10, { width: 120 });
    send(element, 'pointerup', 70, 10);
    expect(kinds()).toEqual(['press', 'dragStart', 'cancel']);
  });

  it('does not disturb a pen, whichever came first', () => {
    send(element, 'pointerdown', 300, 300, { id: 1 });
    send(element, 'pointerdown', 50, 50, { id: 2, type: 'pen' });
    send(element, 'pointermove', 305, 300, { id: 1 });
    send(element, 'pointerdown', 320, 300, { id: 3 });
    send(element, 'pointermove', 90, 50, { id: 2, type: 'pen' });
    send(element, 'pointerup', 90, 50, { id: 2, type: 'pen' });
    expect(kinds()).toEqual(['press', 'cancel', 'press', 'dragStart', 'dragEnd']);
    expect(heard[2]).toMatchObject({ device: 'pen' });
  });
});

describe('a mouse', () => {
  it('pans with its middle button, and its right one does nothing', () => {
    drag(
      element,
      [
        [10, 10],
        [60, 40],
      ],
      { type: 'mouse', button: 1 },
    );
    expect(heard).toMatchObject([{ kind: 'pinch', factor: 1, from: { xPx: 10, yPx: 10 }, to: { xPx: 60, yPx: 40 } }]);
    heard = [];
    tap(element, 10, 10, { type: 'mouse', button: 2 });
    expect(heard).toEqual([]);
  });

  const wheel = (init: WheelEventInit) => {
    const event = new WheelEvent('wheel', { bubbles: true, cancelable: true, ...init });
    // the stand-in page makes a wheel event without a place and without keys; a real one has both
    for (const [name, value] of Object.entries({
      clientX: 50,
      clientY: 60,
      ctrlKey: false,
      shiftKey: false,
      ...init,
    })) {
      Object.defineProperty(event, name, { value });
    }
    element.dispatchEvent(event);
    return event;
  };

  it('zooms with its wheel about the pointer, and the page does not scroll', () => {
    const event = wheel({ deltaY: -100 });
    expect(event.defaultPrevented).toBe(true);
    expect(heard[0]).toMatchObject({ kind: 'pinch', from: { xPx: 50, yPx: 60 }, to: { xPx: 50, yPx: 60 } });
    expect((heard[0] as { factor: number }).factor).toBeGreaterThan(1);
    wheel({ deltaY: 100 });
    const [zoomIn, zoomOut] = heard as { factor: number }[];
    expect((zoomIn?.factor ?? 0) * (zoomOut?.factor ?? 0)).toBeCloseTo(1, 9);
  });

  it('pans with shift, and a trackpad pans with two fingers and zooms with a pinch', () => {
    wheel({ deltaY: 100, shiftKey: true });
    wheel({ deltaX: 3, deltaY: 4 });
    wheel({ deltaY: 2, ctrlKey: true });
    expect(heard).toMatchObject([
      { factor: 1, to: { xPx: -50, yPx: 60 } },
      { factor: 1, to: { xPx: 47, yPx: 56 } },
      { from: { xPx: 50, yPx: 60 }, to: { xPx: 50, yPx: 60 } },
    ]);
    expect((heard[2] as { factor: number }).factor).toBeLessThan(1);
  });

  it('does not zoom while a finger holds something', () => {
    send(element, 'pointerdown', 10, 10);
    heard = [];
    wheel({ deltaY: -100 });
    expect(heard).toEqual([]);
  });
});
