/** A tile of the shelf that is dragged onto the sheet: from the moment the finger has left it, the sketch goes on. */
import { type PointerEvent as ReactPointerEvent, useRef } from 'react';
import { carryToSketch } from '../../desk/carry.ts';
import type { FittingKind } from '../../plan/schema.ts';
import { useDeskStore } from '../useDesk.ts';

type TileEvent = ReactPointerEvent<HTMLElement>;

/** Where the finger came down, client px. */
type Pressed = Parameters<typeof carryToSketch>[3];

/** A finger that trembles on a tile is still on it, px beyond its edge. */
const SLACK_PX = 4;

function hasLeft({ clientX, clientY, currentTarget }: TileEvent): boolean {
  const { left, right, top, bottom } = currentTarget.getBoundingClientRect();
  return Math.max(left - clientX, clientX - right, top - clientY, clientY - bottom) > SLACK_PX;
}

/**
 * Whether a finger went more up or down than sideways on a tile that is scrolled so: a fast one has left it before the
 * browser says that it scrolls. A mouse has its wheel for that.
 */
const hasScrolled = (from: Pressed, { clientX, clientY, currentTarget, pointerType }: TileEvent): boolean =>
  Math.abs(clientY - from.yPx) > Math.abs(clientX - from.xPx) &&
  pointerType !== 'mouse' &&
  getComputedStyle(currentTarget).touchAction !== 'none';

/** Handlers for the tile of a kind; `onCarried` is called when the sketch has taken it over. A tap stays a tap. */
export function useTileDrag(onCarried: () => void) {
  const desk = useDeskStore();
  const pressed = useRef<Pressed | null>(null);
  const forget = () => {
    pressed.current = null;
  };
  return (kind: FittingKind) => ({
    onPointerDown: ({ isPrimary, button, pointerId, pointerType, clientX, clientY, target }: TileEvent) => {
      // a second finger, or another button of the mouse, drags nothing
      if (!isPrimary || button !== 0) {
        forget();
        return;
      }
      pressed.current = { xPx: clientX, yPx: clientY };
      if (pointerType === 'mouse' && target instanceof Element) target.setPointerCapture?.(pointerId);
    },
    onPointerMove: (event: TileEvent) => {
      // only its own finger moves on it and leaves it: each is heard where it came down
      const from = pressed.current;
      if (from === null || !hasLeft(event)) return;
      forget();
      if (!hasScrolled(from, event) && carryToSketch(desk, kind, event.nativeEvent, from)) onCarried();
    },
    onPointerUp: forget,
    onPointerCancel: forget,
  });
}
