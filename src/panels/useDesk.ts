/** How panels read the desk: stored references and primitives only, everything else is worked out from those. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { answeredPlan, type Desk, type DeskState } from '../desk/desk.ts';
import type { Plan } from '../plan/schema.ts';
import { type Units, unitsFor } from '../words/index.ts';

export const DeskContext = createContext<Desk | null>(null);

export function useDeskStore(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('A panel needs a DeskContext around it.');
  return desk;
}

/** A part of the desk's state. The selector answers a stored reference or a primitive, never something new. */
export function useDesk<T>(selector: (state: DeskState) => T): T {
  return useStore(useDeskStore(), selector);
}

/** The plan as the hand would leave it now, as far as it has been answered for. */
export const usePlan = (): Plan => useDesk(answeredPlan);

/** The answer for that plan. */
export const useAnswer = (): Assessment => answerOf(usePlan());

/** Figures as that plan wants them shown. */
export const useUnits = (): Units => useDesk((state) => unitsFor(answeredPlan(state)));
