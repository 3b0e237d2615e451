import { polylineLength } from '../../geom/polyline.ts';
import { runsAt } from '../byId.ts';
import { drawnLengthOf, drawnM } from '../drawnLength.ts';
import { shareOf, splitTaped } from '../lengths.ts';
import { runPoints } from '../runs.ts';
import type { Plan, Run } from '../schema.ts';
import { hasLeft } from './outdateTapes.ts';
import { withRun } from './replaced.ts';

const drawnBoth = (plan: Plan, runs: readonly Run[]): number =>
  runs.reduce((sum, run) => sum + drawnM(drawnLengthOf(plan, run)), 0);

/**
 * Two taped, unlocked runs at a fitting that has been moved keep their total and share it anew by what is drawn; moved
 * off the cable that was measured, so that the two are drawn further from their total than before, they are outdated.
 */
export function shareTaped(before: Plan, plan: Plan, fittingId: string): Plan {
  const [first, second, ...others] = runsAt(plan, fittingId);
  if (first === undefined || second === undefined || others.length > 0 || first.locked || second.locked) return plan;
  if (first.tapedM === null || second.tapedM === null) return plan;
  const totalM = first.tapedM + second.tapedM;
  const isOff =
    [first, second].some(({ tapedAs }) => tapedAs === 'outdated') ||
    hasLeft(totalM, drawnBoth(before, runsAt(before, fittingId)), drawnBoth(plan, [first, second]));
  const share = shareOf(polylineLength(runPoints(plan, first)), polylineLength(runPoints(plan, second)));
  const [firstM, secondM] = splitTaped(totalM, share);
  const tapedAs = isOff ? 'outdated' : 'share';
  const shared = withRun(plan, first, { ...first, tapedM: firstM, tapedAs });
  return withRun(shared, second, { ...second, tapedM: secondM, tapedAs });
}
