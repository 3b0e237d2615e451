/** How long a run is by the drawing, and how far that may be off. */
import { polylineLength } from '../geom/polyline.ts';
import { runPoints } from './runs.ts';
import type { Plan, Run, Sheet } from './schema.ts';

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

/** Whether its length was measured from end to end, as the run lies now: nothing else is better than drawn. */
export const isTaped = ({ tapedM, tapedAs }: Run): boolean => tapedM !== null && tapedAs === 'run';
