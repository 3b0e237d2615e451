import { type RefObject, useEffect, useRef } from 'react';

/** A pointer that moves no further than this between down and up has tapped, px. */
const SLOP_PX = 10;
/** What opens a dialog closes it too, or puts another in its place. */
const OPENER = '[aria-haspopup="dialog"]';

/**
 * Hears a tap beside an element that lies over the page, and the focus going elsewhere. What is dragged, panned or
 * scrolled beside it leaves it as it is: there is work to be looked at there.
 */
export function useElsewhere(element: RefObject<HTMLElement | null>, isOn: boolean, onElsewhere: () => void): void {
  const heard = useRef(onElsewhere);
  heard.current = onElsewhere;
  useEffect(() => {
    if (!isOn) return;
    let press = { x: 0, y: 0 };
    const isElsewhere = ({ target }: Event): boolean =>
      target instanceof Element && element.current?.contains(target) === false && target.closest(OPENER) === null;
    const onDown = ({ clientX, clientY }: PointerEvent) => {
      press = { x: clientX, y: clientY };
    };
    // the last that a tap brings: whatever the press did to the focus is done
    const onClick = (event: MouseEvent) => {
      const wayPx = Math.hypot(event.clientX - press.x, event.clientY - press.y);
      if (wayPx <= SLOP_PX && isElsewhere(event)) heard.current();
    };
    const onFocus = (event: FocusEvent) => {
      if (isElsewhere(event)) heard.current();
    };
    const gone = new AbortController();
    const first = { capture: true, signal: gone.signal };
    document.addEventListener('pointerdown', onDown, first);
    document.addEventListener('click', onClick, first);
    document.addEventListener('focusin', onFocus, first);
    return () => gone.abort();
  }, [element, isOn]);
}
