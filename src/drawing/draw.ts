import type { Assessment } from '../assess/answer.ts';
import { runBrief } from '../assess/brief.ts';
import { fittingById, runById } from '../plan/byId.ts';
import { placeOn } from '../plan/runs.ts';
import type { Fitting, Plan, Run, Sheet } from '../plan/schema.ts';
import { drawFitting } from './fittings.ts';
import { drawHazards } from './hazard.ts';
import { drawLabels, type LabelWords } from './labels.ts';
import { drawOutline } from './outline.ts';
import { drawRun } from './runs.ts';
import type { Drawing } from './shapes.ts';

/** One sheet of a plan with its answer, as plain shapes. */
export const drawSheet = (plan: Plan, sheet: Sheet, answer: Assessment, words: LabelWords): Drawing => ({
  outline: drawOutline(sheet),
  ...drawThings(plan, sheet, answer, words),
});

/**
 * What lies on the sheet: all of it, or with `only` the fittings and runs of those ids, which is what moves under a
 * finger. What nothing protects is drawn in either case.
 */
export function drawThings(
  plan: Plan,
  sheet: Sheet,
  answer: Assessment,
  words: LabelWords,
  only: ReadonlySet<string> | null = null,
): Omit<Drawing, 'outline'> {
  const [runs, fittings] = only === null ? [plan.runs, plan.fittings] : named(plan, only);
  const here = runs.filter((run) => run.sheetId === sheet.id);
  return {
    runs: here.map((run) => drawRun(plan, run, runBrief(answer, run.id))),
    fittings: fittings.flatMap((fitting) => {
      const at = placeOn(fitting, sheet.id);
      return at === null ? [] : [drawFitting(fitting, at)];
    }),
    hazards: drawHazards(plan, sheet.id, answer),
    labels: drawLabels(plan, { sheetId: sheet.id, fittings, runs: here }, answer, words),
  };
}

function named(plan: Plan, ids: ReadonlySet<string>): [runs: Run[], fittings: Fitting[]] {
  return [[...ids].flatMap((id) => runById(plan, id) ?? []), [...ids].flatMap((id) => fittingById(plan, id) ?? [])];
}
