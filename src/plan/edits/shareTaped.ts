import { polylineLength } from '../../geom/polyline.ts';
import { runsAt } from '../byId.ts';
import { shareOf, splitTaped } from '../lengths.ts';
import { runPoints } from '../runs.ts';
import type { Plan } from '../schema.ts';
import { withRun } from './accept.ts';

/** Two taped, unlocked runs at a fitting keep their total and share it anew by what is drawn. */
export function shareTaped(plan: Plan, fittingId: string): Plan {
  const [first, second, ...others] = runsAt(plan, fittingId);
  if (first === undefined || second === undefined || others.length > 0 || first.locked || second.locked) return plan;
  if (first.tapedM === null || second.tapedM === null) return plan;
  const share = shareOf(polylineLength(runPoints(plan, first)), polylineLength(runPoints(plan, second)));
  const [firstM, secondM] = splitTaped(first.tapedM + second.tapedM, share);
  return withRun(withRun(plan, first, { ...first, tapedM: firstM }), second, { ...second, tapedM: secondM });
}
