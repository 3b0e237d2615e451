import { commit } from '../../desk/edit.ts';
import { changeFitting, type FittingPatch } from '../../plan/edits/changeFitting.ts';
import { changeRun, type RunPatch } from '../../plan/edits/changeRun.ts';
import { moveFitting } from '../../plan/edits/moveFitting.ts';
import type { Point } from '../../plan/schema.ts';
import { useDeskStore } from '../useDesk.ts';

/** Changes one fitting, each call a step of history. */
export function useFittingChange(id: string) {
  const desk = useDeskStore();
  return {
    change: (patch: FittingPatch) => commit(desk, 'change', (plan) => changeFitting(plan, id, patch)),
    move: (at: Point, sheetId?: string) => commit(desk, 'move', (plan) => moveFitting(plan, id, at, sheetId)),
  };
}

/** Changes one run, each call a step of history. */
export function useRunChange(id: string) {
  const desk = useDeskStore();
  return (patch: RunPatch) => commit(desk, 'change', (plan) => changeRun(plan, id, patch));
}

/** A value its owner has told. */
export const told = <T>(value: T): { value: T; origin: 'told' } => ({ value, origin: 'told' });
