import { useState } from 'react';

interface Steps<T> {
  past: readonly T[];
  now: T;
  future: readonly T[];
}

/** A value with its own undo: nothing of it is part of the plan until it is used. */
export function useSteps<T>(first: T) {
  const [steps, setSteps] = useState<Steps<T>>({ past: [], now: first, future: [] });
  return {
    now: steps.now,
    canUndo: steps.past.length > 0,
    canRedo: steps.future.length > 0,
    take: (next: T) => setSteps(({ past, now }) => ({ past: [...past, now], now: next, future: [] })),
    undo: () =>
      setSteps((state) => {
        const before = state.past.at(-1);
        if (before === undefined) return state;
        return { past: state.past.slice(0, -1), now: before, future: [state.now, ...state.future] };
      }),
    redo: () =>
      setSteps((state) => {
        const [next, ...future] = state.future;
        return next === undefined ? state : { past: [...state.past, state.now], now: next, future };
      }),
  };
}
