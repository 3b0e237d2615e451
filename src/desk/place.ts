/** Putting a fitting onto the sheet or into a run: the same acts for canvas and list, so that both build equal plans. */
import { fittingById } from '../plan/byId.ts';
import { newId } from '../plan/create.ts';
import { addFitting } from '../plan/edits/addFitting.ts';
import { removeFitting } from '../plan/edits/removeFitting.ts';
import { splitRun } from '../plan/edits/splitRun.ts';
import { newFittingIn } from '../plan/newFitting.ts';
import type { Fitting, FittingKind, Plan, Point } from '../plan/schema.ts';
import { INLINE_KINDS } from '../plan/terminals.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';

/**
 * Places a new fitting and selects it; onto a run when one is given and the kind sits in a cable. Answers its id,
 * or null where the plan will not have it (outside the sheet's bounds, or full).
 */
export function placeFitting(
  desk: Desk,
  kind: FittingKind,
  at: Point,
  sheetId: string,
  name: string,
  runId: string | null = null,
): string | null {
  const fitting = newFittingIn(desk.getState().plan, kind, { id: newId(), name, sheetId, at });
  const edit = placing(fitting, runId, newId());
  const selection = { kind: 'fitting', id: fitting.id } as const;
  return commit(desk, 'place', edit, { selection, hand: { way: 'move' } }) ? fitting.id : null;
}

/**
 * The pure edit behind `placeFitting`, for the draft of a press that aims: the same fitting, ids chosen when the press
 * began. A kind that does not sit in a cable, or a run that is gone, leaves it free on the sheet.
 */
export function placing(fitting: Fitting, runId: string | null, newRunId: string): (plan: Plan) => Plan {
  return (plan) => {
    const run = INLINE_KINDS.has(fitting.kind) ? plan.runs.find(({ id }) => id === runId) : undefined;
    return run === undefined ? addFitting(plan, fitting) : splitRun(plan, run.id, fitting.at, fitting, newRunId);
  };
}

/** True when the fitting sits in a cable by its kind and nothing is joined to it yet: it may be dropped onto a run. */
export function mayDropOnRun(plan: Plan, fittingId: string): boolean {
  const fitting = fittingById(plan, fittingId);
  if (fitting === undefined || !INLINE_KINDS.has(fitting.kind) || fitting.locked) return false;
  return plan.runs.every(({ from, to }) => from.fittingId !== fittingId && to.fittingId !== fittingId);
}

/** Drops a loose fuse or pass-through that is already on the sheet onto a run, which it splits. */
export function dropOnRun(desk: Desk, fittingId: string, runId: string, at: Point): boolean {
  const selection = { kind: 'fitting', id: fittingId } as const;
  return commit(desk, 'dropOnRun', dropping(fittingId, runId, at, newId()), { selection });
}

/** The pure edit behind `dropOnRun`, for the draft of a drag; the same plan when it may not be dropped there. */
export function dropping(fittingId: string, runId: string, at: Point, newRunId: string): (plan: Plan) => Plan {
  return (plan) => {
    const fitting = fittingById(plan, fittingId);
    if (fitting === undefined || !mayDropOnRun(plan, fittingId)) return plan;
    if (!plan.runs.some(({ id }) => id === runId)) return plan;
    return splitRun(removeFitting(plan, fittingId), runId, at, { ...fitting, at }, newRunId);
  };
}
