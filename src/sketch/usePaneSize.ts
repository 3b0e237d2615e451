import { type RefObject, useLayoutEffect, useState } from 'react';
import type { PaneSize } from '../desk/camera.ts';

const NOTHING: PaneSize = { widthPx: 0, heightPx: 0 };

/** The size of an element in css px, followed as it changes; zero before the first measurement. */
export function usePaneSize(ref: RefObject<HTMLElement | null>): PaneSize {
  const [size, setSize] = useState(NOTHING);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => {
      const next = { widthPx: element.clientWidth, heightPx: element.clientHeight };
      setSize((now) => (now.widthPx === next.widthPx && now.heightPx === next.heightPx ? now : next));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
