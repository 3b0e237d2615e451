import { useEffect, useRef } from 'react';

/**
 * Calls `act` at once, or, where a press is under way, after its click: what makes the page move while a finger or a
 * button is down takes away what was pressed, and the click with it. Presses are watched while `isWatching`.
 */
export function useAfterPress(isWatching: boolean, act: () => void): () => void {
  const isPressed = useRef(false);
  const isDue = useRef(false);
  const latest = useRef(act);
  latest.current = act;

  useEffect(() => {
    if (!isWatching) return;
    // a touch sends these too, and moves the focus between them
    const press = () => {
      isPressed.current = true;
    };
    const release = () => {
      isPressed.current = false;
      if (!isDue.current) return;
      isDue.current = false;
      // the click comes right behind this
      setTimeout(() => latest.current());
    };
    window.addEventListener('mousedown', press, { capture: true });
    window.addEventListener('mouseup', release, { capture: true });
    return () => {
      isPressed.current = false;
      isDue.current = false;
      window.removeEventListener('mousedown', press, { capture: true });
      window.removeEventListener('mouseup', release, { capture: true });
    };
  }, [isWatching]);

  return () => {
    if (isPressed.current) isDue.current = true;
    else latest.current();
  };
}
