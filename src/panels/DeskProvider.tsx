import { type ReactNode, useDeferredValue } from 'react';
import { useStore } from 'zustand';
import { answeredPlan, type Desk } from '../desk/desk.ts';
import { AnsweredContext, DeskContext } from './useDesk.ts';

/** The desk for all that stands within. */
export const DeskProvider = ({ desk, children }: { desk: Desk; children: ReactNode }) => (
  <DeskContext value={desk}>
    <Answered desk={desk}>{children}</Answered>
  </DeskContext>
);

/**
 * While a finger drags, panels take a new answer a bit at a time between its frames: the finger comes first. An act that
 * is done is shown at once.
 */
function Answered({ desk, children }: { desk: Desk; children: ReactNode }) {
  const isDragging = useStore(desk, ({ draft }) => draft !== null);
  const now = useStore(desk, answeredPlan);
  const later = useDeferredValue(now);
  return <AnsweredContext value={isDragging ? later : now}>{children}</AnsweredContext>;
}
