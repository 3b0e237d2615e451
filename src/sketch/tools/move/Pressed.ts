import type { PaneId, Selection } from '../../../desk/desk.ts';
import { inspect } from '../../../desk/inspect.ts';
import { mayDropOnRun } from '../../../desk/place.ts';
import { isLocked, select } from '../../../desk/selection.ts';
import { fittingById } from '../../../plan/byId.ts';
import { newId } from '../../../plan/create.ts';
import { placeOn, runPoints } from '../../../plan/runs.ts';
import type { Plan } from '../../../plan/schema.ts';
import type { OneFinger } from '../../input/gestures.ts';
import { panning } from '../Panning.ts';
import type { HandEvent, HandState, Held, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';
import { draggingBend } from './DraggingBend.ts';
import { draggingEnd } from './DraggingEnd.ts';
import { draggingFitting } from './DraggingFitting.ts';

/** A finger is down and has not moved: a tap selects, a drag moves what is under it, or the sheet. */
export function pressed(state: StateNamed<'move.pressed'>, event: HandEvent, bench: Workbench): HandState {
  switch (event.kind) {
    case 'tap':
      select(bench.desk, selectionOf(state.picked));
      return { name: 'move.idle' };
    case 'longPress': {
      const selection = selectionOf(state.picked);
      if (selection !== null) inspect(bench.desk, selection);
      return { name: 'move.idle' };
    }
    case 'dragStart':
      return moved(
        grasp(state.picked, event, bench) ?? pan(state.picked, event, bench),
        { ...event, kind: 'dragMove' },
        bench,
      );
    default:
      return state;
  }
}

type Drag = OneFinger<PaneId> & { from: { xPx: number; yPx: number } };

type Grasped = StateNamed<'move.draggingFitting' | 'move.draggingBend' | 'move.draggingEnd' | 'panning'>;

/** What was passed within the slop is made up for at once: the thing is under the finger from the first. */
function moved(state: Grasped, event: HandEvent, bench: Workbench): HandState {
  switch (state.name) {
    case 'move.draggingFitting':
      return draggingFitting(state, event, bench);
    case 'move.draggingBend':
      return draggingBend(state, event, bench);
    case 'move.draggingEnd':
      return draggingEnd(state, event, bench);
    case 'panning':
      return panning(state, event, bench);
  }
}

const pan = (picked: Held | null, event: Drag, bench: Workbench): Grasped => ({
  name: 'panning',
  isLocked: isFixed(bench.plan, picked),
  pane: event.surface,
  last: event.from,
  back: { name: 'move.idle' },
});

export function selectionOf(picked: Held | null): Selection | null {
  switch (picked?.kind) {
    case 'fitting':
      return { kind: 'fitting', id: picked.fittingId };
    case 'bend':
      return { kind: 'bend', id: picked.runId, index: picked.index };
    case 'run':
    case 'end':
      return { kind: 'run', id: picked.runId };
    default:
      return null;
  }
}

function isFixed(plan: Plan, picked: Held | null): boolean {
  const selection = selectionOf(picked);
  return selection !== null && isLocked(plan, selection);
}

/** Takes hold of what the finger is on; null when that cannot be moved. */
function grasp(picked: Held | null, event: Drag, bench: Workbench): Grasped | null {
  const aim = bench.aim(event.surface, event.from);
  if (picked === null || aim === null) return null;
  if (picked.kind === 'fitting') {
    const fitting = fittingById(bench.plan, picked.fittingId);
    const home = fitting === undefined ? null : placeOn(fitting, bench.sheetId);
    if (fitting === undefined || fitting.locked || home === null) return null;
    select(bench.desk, { kind: 'fitting', id: fitting.id });
    const act = mayDropOnRun(bench.plan, fitting.id) ? 'dropOnRun' : 'moveFitting';
    bench.drafts.begin('moveFitting');
    return {
      name: 'move.draggingFitting',
      fittingId: fitting.id,
      home,
      // the fitting keeps its distance to the finger, so that it does not jump under it
      gripPx: { xPx: (home.xM - aim.at.xM) * aim.pxPerM, yPx: (home.yM - aim.at.yM) * aim.pxPerM },
      act,
      splits: null,
      newRunId: newId(),
    };
  }
  if (picked.kind === 'terminal') return null;
  const run = bench.plan.runs.find(({ id }) => id === picked.runId);
  if (run === undefined || run.locked) return null;
  if (picked.kind === 'end') {
    bench.drafts.begin('reconnect');
    return { name: 'move.draggingEnd', runId: run.id, end: picked.end, tip: picked.at };
  }
  const index = picked.kind === 'bend' ? picked.index : picked.segment;
  const isNew = picked.kind === 'run';
  select(bench.desk, { kind: 'run', id: run.id });
  bench.drafts.begin(isNew ? 'addBend' : 'moveBend');
  return { name: 'move.draggingBend', runId: run.id, index, isNew, before: runPoints(bench.plan, run)[index] ?? null };
}
