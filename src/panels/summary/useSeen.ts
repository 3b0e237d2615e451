import { type RefObject, useEffect, useState } from 'react';

/** Whether any of an element can be seen: false while it is scrolled out of its pane, or folded away. */
export function useSeen(place: RefObject<HTMLElement | null>): boolean {
  const [isSeen, setSeen] = useState(true);
  useEffect(() => {
    if (place.current === null || !('IntersectionObserver' in window)) return;
    const observer = new IntersectionObserver((entries) => {
      const last = entries.at(-1);
      if (last !== undefined) setSeen(last.isIntersecting);
    });
    observer.observe(place.current);
    return () => observer.disconnect();
  }, [place]);
  return isSeen;
}
