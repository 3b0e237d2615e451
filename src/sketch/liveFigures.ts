/** The figures beside a finger that drags: what it changes, said at once. */

import type { Assessment } from '../assess/answer.ts';
import { cableM } from '../drawing/runs.ts';
import { polylineLength } from '../geom/polyline.ts';
import { runsAt } from '../plan/byId.ts';
import type { Plan } from '../plan/schema.ts';
import { type Units, words } from '../words/index.ts';
import type { HandState } from './tools/state.ts';

export interface LiveFigure {
  name: string;
  value: string;
  /** The unprotected length: it carries the hazard's colours. */
  isHazard: boolean;
}

/** Runs whose length the drag changes and is worth saying: one, or the two at a fuse. */
function heldRuns(state: HandState, plan: Plan): string[] {
  switch (state.name) {
    case 'move.draggingBend':
    case 'move.draggingEnd':
      return [state.runId];
    case 'move.draggingFitting':
      return runsAt(plan, state.fittingId).map(({ id }) => id);
    case 'place.aiming':
      return runsAt(plan, state.fitting.id).map(({ id }) => id);
    default:
      return [];
  }
}

function lengthOf(state: HandState, plan: Plan, answer: Assessment, units: Units): string | null {
  if (state.name === 'run.drawing') {
    const { trace, stroke } = state;
    const scale = plan.sheets.find(({ id }) => id === trace.sheetId)?.scale.value ?? 1;
    return units.length(polylineLength([trace.start, ...trace.bends, ...stroke]) * scale);
  }
  const ids = heldRuns(state, plan);
  if (ids.length === 0 || ids.length > 2) return null;
  const lengths = ids.flatMap((id) => cableM(answer, id) ?? []);
  return lengths.length === 0 ? null : lengths.map((lengthM) => units.length(lengthM)).join(' + ');
}

/** States whose draft is assessed as it goes. */
const CHANGES_THE_ANSWER: ReadonlySet<HandState['name']> = new Set([
  'move.draggingFitting',
  'move.draggingBend',
  'move.draggingEnd',
  'place.aiming',
]);

/** Rows to show; none while nothing is being changed. */
export function liveFigures(state: HandState, plan: Plan, answer: Assessment, units: Units): LiveFigure[] {
  const { live } = words.sketch;
  const length = lengthOf(state, plan, answer, units);
  const rows: LiveFigure[] = length === null ? [] : [{ name: live.length, value: length, isHazard: false }];
  if (!CHANGES_THE_ANSWER.has(state.name)) return rows;
  const unprotectedM = Math.max(0, ...answer.sources.map((source) => source.unprotectedM));
  if (unprotectedM > 0) rows.push({ name: live.unprotected, value: units.length(unprotectedM), isHazard: true });
  const drop = answer.figures.worstDrop.value;
  if (typeof drop === 'number') rows.push({ name: live.drop, value: units.voltage(drop), isHazard: false });
  return rows;
}
