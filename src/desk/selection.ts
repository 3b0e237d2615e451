/** What is picked out, against a plan that may no longer hold it. */
import type { Fitting, Plan, Run } from '../plan/schema.ts';
import { type Desk, type Selection, shownPlan } from './desk.ts';
import { sheetShowing } from './openSheet.ts';

/** The selection as far as the plan still holds it: a bend that is gone leaves its run selected. */
export function keptSelection(plan: Plan, selection: Selection | null): Selection | null {
  if (selection === null) return null;
  if (selection.kind === 'fitting') return plan.fittings.some(({ id }) => id === selection.id) ? selection : null;
  const run = plan.runs.find(({ id }) => id === selection.id);
  if (run === undefined) return null;
  if (selection.kind === 'run' || selection.index < run.bends.length) return selection;
  return { kind: 'run', id: run.id };
}

/**
 * Selects something, or nothing; never a step of history. What the plan does not hold is not selected. Where it is on
 * another sheet only, that one is opened.
 */
export function select(desk: Desk, selection: Selection | null): void {
  desk.setState((state) => {
    const kept = keptSelection(shownPlan(state), selection);
    return { selection: kept, sheetId: sheetShowing(state, kept) };
  });
}

/** Everything that can be selected from the keyboard, in the order of the list: fittings, then runs. */
export function selectables(plan: Plan): Selection[] {
  return [
    ...plan.fittings.map(({ id }): Selection => ({ kind: 'fitting', id })),
    ...plan.runs.map(({ id }): Selection => ({ kind: 'run', id })),
  ];
}

/** A locked fitting or run does not move and is not deleted; a bend is locked with its run. */
export function isLocked(plan: Plan, selection: Selection): boolean {
  return found(plan, selection)?.locked ?? false;
}

function found(plan: Plan, selection: Selection): Fitting | Run | undefined {
  const items: readonly (Fitting | Run)[] = selection.kind === 'fitting' ? plan.fittings : plan.runs;
  return items.find(({ id }) => id === selection.id);
}
