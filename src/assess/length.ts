import { polylineLength } from '../geom/polyline.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Run, Sheet } from '../plan/schema.ts';
import type { LengthAnswer } from './answer.ts';

/** Uncertainty of a drawn length: this share of it, and never less than this much. Source: our rules, section 6. */
export const DRAWN_SHARE = 0.1;
export const DRAWN_LEAST_M = 0.1;

/** The sheet a run or a fitting lies on; the first one when the plan does not hold it. */
export function sheetOf(plan: Plan, sheetId: string): Sheet | undefined {
  return plan.sheets.find(({ id }) => id === sheetId) ?? plan.sheets[0];
}

/** The parts a drawn length is made of: line in the plane, scale, slack, rise. */
export interface DrawnLength {
  readonly lineM: number;
  readonly scale: number;
  readonly slackPercent: number;
  readonly riseM: number;
}

export function drawnLengthOf(plan: Plan, run: Run): DrawnLength {
  return {
    lineM: polylineLength(runPoints(plan, run)),
    scale: sheetOf(plan, run.sheetId)?.scale.value ?? 1,
    slackPercent: run.slackPercent,
    riseM: run.riseM,
  };
}

/** Length of cable, m: line x scale x (1 + slack) + rise. 2 m drawn at scale 1 with 5 % slack and 0.3 m of rise: 2.4 m. */
export const drawnM = ({ lineM, scale, slackPercent, riseM }: DrawnLength): number =>
  lineM * scale * (1 + slackPercent / 100) + riseM;

/** How far a drawn length may be off either way, m: the larger of 10 % and 100 mm. 0.3 m: 0.1 m. 5 m: 0.5 m. */
export const drawnUncertaintyM = (lengthM: number): number => Math.max(DRAWN_SHARE * lengthM, DRAWN_LEAST_M);

/** Length of a run: the taped one where there is one, else the drawn one with its uncertainty. */
export function lengthOf(plan: Plan, run: Run): LengthAnswer {
  if (run.tapedM !== null) return { lengthM: run.tapedM, origin: 'taped', plusMinusM: 0 };
  const lengthM = drawnM(drawnLengthOf(plan, run));
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
