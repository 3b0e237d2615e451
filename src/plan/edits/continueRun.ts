import { newRun } from '../create.ts';
import type { Plan, Point, RunKind, TerminalRef } from '../schema.ts';
import { addContinuation, type NewContinuation } from './addContinuation.ts';
import { addRun } from './addRun.ts';

/** A run as far as it is drawn on one sheet; the point at which it goes on is its end. */
export interface RunToContinue {
  readonly id: string;
  readonly name: string;
  readonly kind: RunKind;
  readonly from: TerminalRef;
  /** Without the point itself. */
  readonly bends: readonly Point[];
}

/** Ends a run that is being drawn in a new continuation point: both, or neither. */
export function continueRun(plan: Plan, run: RunToContinue, point: NewContinuation): Plan {
  const withPoint = addContinuation(plan, point);
  if (withPoint === plan) return plan;
  const to = { fittingId: point.id, terminal: 'through' };
  const withRun = addRun(withPoint, newRun({ ...run, sheetId: point.from.sheetId, to }));
  return withRun === withPoint ? plan : withRun;
}
