import { type ReactNode, useDeferredValue } from 'react';
import { useStore } from 'zustand';
import { answeredPlan } from '../desk/desk.ts';
import { pacedOf } from './paced.ts';
import { AnsweredContext, useDeskStore } from './useDesk.ts';

/** Figures that change oftener cannot be read, ms; fields are not read at all while the hand is at the sketch. */
const PACES_MS = { figures: 150, fields: 500 } as const;

/**
 * What stands within takes the answers to a finger that drags at a pace of its own, and a bit at a time between the
 * frames of the finger, which comes first. An act that is done is shown at once. Around as little as can be: all that
 * stands within is gone through when an answer comes.
 */
export function Answered({ pace, children }: { pace: keyof typeof PACES_MS; children: ReactNode }) {
  const desk = useDeskStore();
  const isDragging = useStore(desk, ({ draft }) => draft !== null);
  const now = useStore(desk, answeredPlan);
  const paced = useStore(pacedOf(desk, PACES_MS[pace]), ({ plan }) => plan);
  const later = useDeferredValue(paced);
  return <AnsweredContext value={isDragging ? later : now}>{children}</AnsweredContext>;
}
