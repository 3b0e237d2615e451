import { fittingById } from '../byId.ts';
import type { Plan, Point } from '../schema.ts';
import { INLINE_KINDS } from '../terminals.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withPlace } from './replaced.ts';
import { shareTaped } from './shareTaped.ts';

/**
 * Moves a fitting; the drawn ends of its runs go with it, taped lengths stay, and are outdated when it is moved away. An inline fitting between two taped runs
 * slides along one measured cable: the two keep their total and share it anew by what is drawn, unless one of them
 * is locked. A locked fitting stays where it is. A continuation point is moved on the sheet that is named; anything else
 * stands on one sheet only.
 */
export function moveFitting(plan: Plan, id: string, at: Point, sheetId?: string): Plan {
  const fitting = fittingById(plan, id);
  if (fitting === undefined || fitting.locked) return plan;
  const moved = withPlace(plan, fitting, at, sheetId);
  if (moved === plan) return plan;
  return outdateTapes(plan, INLINE_KINDS.has(fitting.kind) ? shareTaped(plan, moved, id) : moved);
}
