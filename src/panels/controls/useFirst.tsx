import { type ReactNode, useState } from 'react';
import { words } from '../../words/answer.ts';

/** More than anybody reads at once; a thousand rows would slow down all that the page does beside them. */
const FIRST = 30;

interface FirstOfList<T> {
  readonly shown: readonly T[];
  /** Shows the rest, or no more than the first again; null where there is no more. */
  readonly more: ReactNode;
}

/** The first of a long list, with what is not to be missed wherever it stands; all of it when asked for. */
export function useFirst<T>(all: readonly T[], isNotToBeMissed: (one: T) => boolean): FirstOfList<T> {
  const [isWhole, setWhole] = useState(false);
  if (all.length <= FIRST) return { shown: all, more: null };
  const shown = isWhole ? all : all.filter((one, place) => place < FIRST || isNotToBeMissed(one));
  const { showAll, showFirst } = words.headline;
  const more = (
    <button type="button" className="show-all" aria-expanded={isWhole} onClick={() => setWhole(!isWhole)}>
      {isWhole ? showFirst(FIRST) : showAll(all.length)}
    </button>
  );
  return { shown, more };
}
