import { fittingById } from '../byId.ts';
import type { Plan, Point } from '../schema.ts';
import { INLINE_KINDS } from '../terminals.ts';
import { withFitting } from './accept.ts';
import { shareTaped } from './shareTaped.ts';

/**
 * Moves a fitting; the drawn ends of its runs go with it, taped lengths stay. An inline fitting between two taped runs
 * slides along one measured cable: the two keep their total and share it anew by what is drawn, unless one of them
 * is locked. A locked fitting stays where it is.
 */
export function moveFitting(plan: Plan, id: string, at: Point): Plan {
  const fitting = fittingById(plan, id);
  if (fitting === undefined || fitting.locked) return plan;
  const moved = withFitting(plan, fitting, { ...fitting, at });
  return moved === plan || !INLINE_KINDS.has(fitting.kind) ? moved : shareTaped(moved, id);
}
