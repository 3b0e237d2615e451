/** Which sheet is open: a view of the plan, no part of it, so that it is never a step of history. */
import { fittingById, runById } from '../plan/byId.ts';
import { placeOn } from '../plan/runs.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { type DeskState, type Selection, shownPlan } from './desk.ts';

type State = Pick<DeskState, 'plan' | 'draft' | 'sheetId'>;

/** The open sheet: the first where the one that was open is gone. */
export function openSheet(state: State): Sheet {
  const { sheets } = shownPlan(state);
  const sheet = sheets.find(({ id }) => id === state.sheetId) ?? sheets[0];
  if (sheet === undefined) throw new Error('A plan has at least one sheet.');
  return sheet;
}

/** The sheet to open for what is selected: the open one where it is on that, which a continuation point is on two of. */
export function sheetShowing(state: State, selection: Selection | null): string | null {
  if (selection === null) return state.sheetId;
  const own = sheetOf(shownPlan(state), selection, openSheet(state).id);
  return own ?? state.sheetId;
}

function sheetOf(plan: Plan, selection: Selection, openId: string): string | null {
  if (selection.kind !== 'fitting') return runById(plan, selection.id)?.sheetId ?? null;
  const fitting = fittingById(plan, selection.id);
  if (fitting === undefined) return null;
  return placeOn(fitting, openId) === null ? fitting.sheetId : openId;
}
