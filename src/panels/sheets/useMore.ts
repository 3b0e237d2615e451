import { type RefObject, useLayoutEffect, useState } from 'react';

/** On which side of a strip that scrolls sideways there is more of it than is seen. */
export type More = 'none' | 'before' | 'after' | 'both';

/** Less is a rounding, px. */
const LEAST_PX = 2;

function moreOf({ scrollLeft, scrollWidth, clientWidth }: HTMLElement): More {
  const isBefore = scrollLeft > LEAST_PX;
  const isAfter = scrollWidth - clientWidth - scrollLeft > LEAST_PX;
  if (isBefore) return isAfter ? 'both' : 'before';
  return isAfter ? 'after' : 'none';
}

/** Brings what is current wholly into view when `key` changes; answers where there is more, and what to call on a scroll. */
export function useMore(strip: RefObject<HTMLElement | null>, key: string): readonly [More, () => void] {
  const [more, setMore] = useState<More>('none');
  const look = () => {
    if (strip.current !== null) setMore(moreOf(strip.current));
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is current is found in the page
  useLayoutEffect(() => {
    strip.current?.querySelector('[aria-current]')?.scrollIntoView({ inline: 'nearest', block: 'nearest' });
    look();
    window.addEventListener('resize', look);
    return () => window.removeEventListener('resize', look);
  }, [key]);
  return [more, look];
}
