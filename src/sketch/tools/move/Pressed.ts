import type { PaneId, Selection } from '../../../desk/desk.ts';
import { mayDropOnRun } from '../../../desk/place.ts';
import { select } from '../../../desk/selection.ts';
import type { Picked } from '../../../drawing/pick.ts';
import { fittingById } from '../../../plan/byId.ts';
import { newId } from '../../../plan/create.ts';
import { runPoints } from '../../../plan/runs.ts';
import type { OneFinger } from '../../input/gestures.ts';
import { panning } from '../Panning.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';
import { draggingBend } from './DraggingBend.ts';
import { draggingFitting } from './DraggingFitting.ts';

/** A finger is down and has not moved: a tap selects, a drag moves what is under it, or the sheet. */
export function pressed(state: StateNamed<'move.pressed'>, event: HandEvent, bench: Workbench): HandState {
  switch (event.kind) {
    case 'tap':
    case 'longPress':
      select(bench.desk, selectionOf(state.picked));
      return { name: 'move.idle' };
    case 'dragStart':
      return moved(grasp(state.picked, event, bench) ?? pan(event), { ...event, kind: 'dragMove' }, bench);
    default:
      return state;
  }
}

type Grasped = StateNamed<'move.draggingFitting' | 'move.draggingBend' | 'panning'>;

/** What was passed within the slop is made up for at once: the thing is under the finger from the first. */
function moved(state: Grasped, event: HandEvent, bench: Workbench): HandState {
  switch (state.name) {
    case 'move.draggingFitting':
      return draggingFitting(state, event, bench);
    case 'move.draggingBend':
      return draggingBend(state, event, bench);
    case 'panning':
      return panning(state, event, bench);
  }
}

const pan = (event: OneFinger<PaneId> & { from: { xPx: number; yPx: number } }): Grasped => ({
  name: 'panning',
  pane: event.surface,
  last: event.from,
  back: { name: 'move.idle' },
});

function selectionOf(picked: Picked | null): Selection | null {
  switch (picked?.kind) {
    case 'fitting':
      return { kind: 'fitting', id: picked.fittingId };
    case 'bend':
      return { kind: 'bend', id: picked.runId, index: picked.index };
    case 'run':
      return { kind: 'run', id: picked.runId };
    default:
      return null;
  }
}

/** Takes hold of what the finger is on; null when that cannot be moved. */
function grasp(
  picked: Picked | null,
  event: OneFinger<PaneId> & { from: { xPx: number; yPx: number } },
  bench: Workbench,
): Grasped | null {
  const aim = bench.aim(event.surface, event.from);
  if (picked === null || aim === null) return null;
  if (picked.kind === 'fitting') {
    const fitting = fittingById(bench.plan, picked.fittingId);
    if (fitting === undefined || fitting.locked) return null;
    select(bench.desk, { kind: 'fitting', id: fitting.id });
    const act = mayDropOnRun(bench.plan, fitting.id) ? 'dropOnRun' : 'moveFitting';
    bench.drafts.begin('moveFitting');
    return {
      name: 'move.draggingFitting',
      fittingId: fitting.id,
      home: fitting.at,
      // the fitting keeps its distance to the finger, so that it does not jump under it
      grip: { xM: fitting.at.xM - aim.at.xM, yM: fitting.at.yM - aim.at.yM },
      act,
      splits: null,
      newRunId: newId(),
    };
  }
  if (picked.kind === 'terminal') return null;
  const run = bench.plan.runs.find(({ id }) => id === picked.runId);
  if (run === undefined || run.locked) return null;
  const index = picked.kind === 'bend' ? picked.index : picked.segment;
  const isNew = picked.kind === 'run';
  select(bench.desk, { kind: 'run', id: run.id });
  bench.drafts.begin(isNew ? 'addBend' : 'moveBend');
  return { name: 'move.draggingBend', runId: run.id, index, isNew, before: runPoints(bench.plan, run)[index] ?? null };
}
