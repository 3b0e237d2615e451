import { type ReactNode, startTransition, useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { answeredPlan } from '../desk/desk.ts';
import { calmOf } from './calm.ts';
import { PACES, pacedOf } from './paced.ts';
import { AnsweredContext, useDeskStore } from './useDesk.ts';

/**
 * What stands within takes the answers to a finger that drags at a pace of its own, and a bit at a time between the
 * frames of the finger, which comes first. An act that is done is shown at once. Around as little as can be: all that
 * stands within is gone through when an answer comes.
 */
export function Answered({ pace, children }: { pace: keyof typeof PACES; children: ReactNode }) {
  const desk = useDeskStore();
  const done = useStore(calmOf(desk), (state) => (state.draft === null ? answeredPlan(state) : null));
  const paced = pacedOf(desk, PACES[pace]);
  const [later, show] = useState(() => paced.getState().plan);
  useEffect(() => {
    show(paced.getState().plan);
    return paced.subscribe(({ plan }) => startTransition(() => show(plan)));
  }, [paced]);
  return <AnsweredContext value={done ?? later}>{children}</AnsweredContext>;
}
