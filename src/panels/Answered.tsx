import { type ReactNode, startTransition, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { answeredPlan } from '../desk/desk.ts';
import type { Plan } from '../plan/schema.ts';
import { calmOf } from './calm.ts';
import { PACES, pacedOf } from './paced.ts';
import { AnsweredContext, useDeskStore } from './useDesk.ts';

/**
 * The plan to show an answer to, at a pace of its own while a finger drags: drawn a bit at a time between the frames of
 * the finger, which comes first. An act that is done is shown at once.
 */
export function usePaced(pace: keyof typeof PACES): Plan {
  const desk = useDeskStore();
  const done = useStore(calmOf(desk), (state) => (state.draft === null ? answeredPlan(state) : null));
  const paced = pacedOf(desk, PACES[pace]);
  const [later, show] = useState(() => paced.getState().plan);
  useEffect(() => {
    show(paced.getState().plan);
    return paced.subscribe(({ plan }) => startTransition(() => show(plan)));
  }, [paced]);
  return done ?? later;
}

/** What stands within shows no newer plan. Around as little as can be: all of it is gone through when an answer comes. */
export const Answered = ({ pace, children }: { pace: keyof typeof PACES; children: ReactNode }) => (
  <AnsweredContext value={usePaced(pace)}>{children}</AnsweredContext>
);
