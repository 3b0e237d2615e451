import type { Assessment } from '../assess/answer.ts';
import { placeOn } from '../plan/runs.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { drawFitting } from './fittings.ts';
import { drawHazards } from './hazard.ts';
import { drawLabels, type LabelWords } from './labels.ts';
import { drawOutline } from './outline.ts';
import { drawRun } from './runs.ts';
import type { Drawing } from './shapes.ts';

/** One sheet of a plan with its answer, as plain shapes. */
export function drawSheet(plan: Plan, sheet: Sheet, answer: Assessment, words: LabelWords): Drawing {
  const runAnswers = new Map(answer.runs.map((run) => [run.runId, run]));
  const runs = plan.runs.filter((run) => run.sheetId === sheet.id);
  const runIds = new Set(runs.map(({ id }) => id));
  return {
    outline: drawOutline(sheet),
    runs: runs.map((run) => drawRun(plan, run, runAnswers.get(run.id))),
    fittings: plan.fittings.flatMap((fitting) => {
      const at = placeOn(fitting, sheet.id);
      return at === null ? [] : [drawFitting(fitting, at)];
    }),
    hazards: drawHazards(plan, answer).filter(({ runId }) => runIds.has(runId)),
    labels: drawLabels(plan, sheet.id, answer, words),
  };
}
