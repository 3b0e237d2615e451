/** A tile of the shelf that is dragged onto the sheet: from the moment the finger has left it, the sketch goes on. */
import { type PointerEvent as ReactPointerEvent, useRef } from 'react';
import { carryToSketch } from '../../desk/carry.ts';
import type { FittingKind } from '../../plan/schema.ts';
import { useDeskStore } from '../useDesk.ts';

interface Pressed {
  kind: FittingKind;
  pointerId: number;
  from: { xPx: number; yPx: number };
  box: DOMRect;
  /** The tile lies on what is scrolled up and down: a finger that goes that way scrolls. A mouse has its wheel for it. */
  scrolls: boolean;
}

/** A finger that trembles on a tile is still on it, px beyond its edge. */
const SLACK_PX = 4;
/** From where its way is told, px. */
const SLOP_PX = 8;

const hasLeft = ({ box }: Pressed, { clientX, clientY }: { clientX: number; clientY: number }): boolean =>
  clientX < box.left - SLACK_PX ||
  clientX > box.right + SLACK_PX ||
  clientY < box.top - SLACK_PX ||
  clientY > box.bottom + SLACK_PX;

/** Whether a finger goes more up or down than sideways on what scrolls so; the browser may say so only after it has left. */
function hasScrolled({ scrolls, from }: Pressed, { clientX, clientY }: { clientX: number; clientY: number }): boolean {
  const [dx, dy] = [Math.abs(clientX - from.xPx), Math.abs(clientY - from.yPx)];
  return scrolls && dy > dx && dy > SLOP_PX;
}

/** Handlers for the tile of a kind; `onCarried` is called when the sketch has taken it over. A tap stays a tap. */
export function useTileDrag(onCarried: () => void) {
  const desk = useDeskStore();
  const pressed = useRef<Pressed | null>(null);
  const forget = () => {
    pressed.current = null;
  };
  return (kind: FittingKind) => ({
    onPointerDown: (event: ReactPointerEvent<HTMLElement>) => {
      // a second finger, or another button of the mouse, drags nothing
      if (!event.isPrimary || event.button !== 0) {
        forget();
        return;
      }
      const { pointerId, clientX, clientY, currentTarget } = event;
      const box = currentTarget.getBoundingClientRect();
      const scrolls = event.pointerType !== 'mouse' && getComputedStyle(currentTarget).touchAction !== 'none';
      pressed.current = { kind, pointerId, from: { xPx: clientX, yPx: clientY }, box, scrolls };
      if (event.pointerType === 'mouse' && event.target instanceof Element) event.target.setPointerCapture?.(pointerId);
    },
    onPointerMove: (event: ReactPointerEvent<HTMLElement>) => {
      const press = pressed.current;
      if (press === null || press.pointerId !== event.pointerId) return;
      if (hasScrolled(press, event)) forget();
      else if (hasLeft(press, event)) {
        forget();
        if (carryToSketch(desk, press.kind, event.nativeEvent, press.from)) onCarried();
      }
    },
    onPointerUp: forget,
    onPointerCancel: forget,
  });
}
