/** How panels read the desk: stored references and primitives only, everything else is worked out from those. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { answeredPlan, type Desk, type DeskState } from '../desk/desk.ts';
import type { Plan } from '../plan/schema.ts';
import { type Units, unitsFor } from '../words/index.ts';
import { calmOf } from './calm.ts';

export const DeskContext = createContext<Desk | null>(null);

/** The plan that what stands within shows; null where it hears of each answer by itself. */
export const AnsweredContext = createContext<Plan | null>(null);

export function useDeskStore(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('A panel needs a DeskProvider around it.');
  return desk;
}

/** A part of the desk's state. The selector answers a stored reference or a primitive, never something new. */
export function useDesk<T>(selector: (state: DeskState) => T): T {
  return useStore(calmOf(useDeskStore()), selector);
}

/** The plan that panels show, with its answer: as the hand would leave it, as far as that has been answered for. */
export function usePlan(): Plan {
  const paced = useContext(AnsweredContext);
  return useDesk((state) => paced ?? answeredPlan(state));
}

/** The answer for that plan. */
export const useAnswer = (): Assessment => answerOf(usePlan());

/** Figures as the plan wants them shown: the same object for every plan that wants the same. */
export const useUnits = (): Units => useDesk((state) => unitsFor(answeredPlan(state)));
