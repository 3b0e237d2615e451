/** What the hand draws over the sheet that is no part of the plan yet. */
import { fittingById, runById } from '../plan/byId.ts';
import { placeOn } from '../plan/runs.ts';
import type { Plan, Point } from '../plan/schema.ts';
import type { HandState, StateNamed, Trace } from './tools/state.ts';

export interface HandDrawing {
  /** Where a fitting is about to be placed. */
  aim: Point | null;
  /** A run without an end, as far as its bends go. */
  trace: Trace | null;
  /** On from there to the finger. */
  stroke: readonly Point[];
}

const NOTHING: HandDrawing = { aim: null, trace: null, stroke: [] };

/** The run whose end is loose, from the end that stays to the finger. */
function looseEnd({ runId, end, tip }: StateNamed<'move.draggingEnd'>, plan: Plan): HandDrawing {
  const run = runById(plan, runId);
  const from = end === 'from' ? run?.to : run?.from;
  const fitting = from === undefined ? undefined : fittingById(plan, from.fittingId);
  const start = run === undefined || fitting === undefined ? null : placeOn(fitting, run.sheetId);
  // joined for now where the finger is: the draft shows it
  if (run === undefined || from === undefined || start === null || tip === null) return NOTHING;
  const bends = end === 'from' ? run.bends.toReversed() : run.bends;
  return { aim: null, trace: { sheetId: run.sheetId, from, start, bends }, stroke: [tip] };
}

export function drawingOf(state: HandState, plan: Plan): HandDrawing {
  switch (state.name) {
    case 'place.aiming':
      return { ...NOTHING, aim: state.at };
    case 'run.drawing':
      return { aim: null, trace: state.trace, stroke: state.stroke };
    case 'run.pickingTerminal':
      return { ...NOTHING, trace: state.trace };
    case 'move.draggingEnd':
      return looseEnd(state, plan);
    default:
      return NOTHING;
  }
}

/** Where a fitting stands on a sheet; null when it is gone, or not on that one. */
export function placeOfFitting(plan: Plan, id: string, sheetId: string): Point | null {
  const fitting = fittingById(plan, id);
  return fitting === undefined ? null : placeOn(fitting, sheetId);
}

/** Where exactly the held thing would come to lie; null while nothing is held. */
export function heldAt(state: HandState, plan: Plan, sheetId: string): Point | null {
  switch (state.name) {
    case 'place.aiming':
      return state.at;
    case 'move.draggingFitting':
      return placeOfFitting(plan, state.fittingId, sheetId);
    case 'move.draggingBend':
      return runById(plan, state.runId)?.bends[state.index] ?? null;
    case 'move.draggingEnd':
      return state.tip;
    default:
      return null;
  }
}
