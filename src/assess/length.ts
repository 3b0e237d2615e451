import { drawnLengthOf, drawnM, drawnUncertaintyM, isTaped } from '../plan/drawnLength.ts';
import type { Plan, Run } from '../plan/schema.ts';
import type { LengthAnswer } from './answer.ts';

/**
 * Length of a run: the taped one where it was measured as it lies, without any doubt; else as drawn, with its
 * uncertainty. A share of what was measured is drawn; where an end was moved away after it was measured, the greater counts.
 */
export function lengthOf(plan: Plan, run: Run): LengthAnswer {
  const { tapedM, tapedAs } = run;
  if (tapedM !== null && isTaped(run)) return { lengthM: tapedM, origin: 'taped', plusMinusM: 0 };
  const drawnLengthM = drawnM(drawnLengthOf(plan, run));
  const lengthM = tapedM !== null && tapedAs === 'share' ? tapedM : Math.max(drawnLengthM, tapedM ?? 0);
  return { lengthM, origin: 'drawn', plusMinusM: drawnUncertaintyM(lengthM) };
}

/**
 * Length along several runs. The uncertainty is that of the drawn part as one cable: the larger of 10 % and 100 mm of
 * its sum. So a pass-through dropped onto a run changes no uncertainty, and what errs in one sketch (its scale, its
 * missing height) errs the same way in all of it. 0.1 m and 0.2 m drawn, 0.1 m taped: 0.4 m, 0.1 m either way.
 */
export function lengthAlong(lengths: readonly LengthAnswer[]): { lengthM: number; plusMinusM: number } {
  const drawn = lengths.filter(({ origin }) => origin === 'drawn');
  const sum = (of: readonly LengthAnswer[]): number => of.reduce((total, { lengthM }) => total + lengthM, 0);
  return { lengthM: sum(lengths), plusMinusM: drawn.length === 0 ? 0 : drawnUncertaintyM(sum(drawn)) };
}
