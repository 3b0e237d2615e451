import type { PaneId } from '../../../desk/desk.ts';
import { inspect } from '../../../desk/inspect.ts';
import type { Picked } from '../../../drawing/pick.ts';
import { fittingById } from '../../../plan/byId.ts';
import { placeOn } from '../../../plan/runs.ts';
import type { TerminalRef } from '../../../plan/schema.ts';
import { selectionOf } from '../move/Pressed.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import { startsAt } from '../terminals.ts';
import type { Workbench } from '../workbench.ts';

/** No run is begun: a tap or a drag on a fitting begins one; a drag on empty sheet pans. */
export function idle(state: StateNamed<'run.idle'>, event: HandEvent, bench: Workbench): HandState {
  if (event.kind === 'longPress') {
    const under = bench.aim(event.surface, event.at);
    const selection = under === null ? null : selectionOf(bench.pick(under));
    if (selection !== null) inspect(bench.desk, selection);
    return state;
  }
  if (event.kind !== 'tap' && event.kind !== 'dragStart') return state;
  const aim = bench.aim(event.surface, event.kind === 'dragStart' ? event.from : event.at);
  const picked = aim === null ? null : bench.pick(aim, true);
  const begun = picked === null ? null : begin(picked, event.surface, bench);
  if (begun !== null) return begun;
  return event.kind === 'dragStart' ? { name: 'panning', pane: event.surface, last: event.from, back: state } : state;
}

function begin(picked: Picked, pane: PaneId, bench: Workbench): HandState | null {
  if (picked.kind !== 'fitting' && picked.kind !== 'terminal') return null;
  const fittingId = picked.kind === 'fitting' ? picked.fittingId : picked.ref.fittingId;
  const terminals = startsAt(bench.plan, fittingId);
  const [only, ...others] = terminals;
  if (only === undefined) return null;
  if (others.length > 0) return { name: 'run.pickingTerminal', fittingId, terminals, pane, trace: null };
  return drawingFrom(only, bench);
}

/** A run that starts at that terminal; idle when its fitting is gone. */
export function drawingFrom(from: TerminalRef, bench: Workbench): HandState {
  const { sheetId } = bench;
  const fitting = fittingById(bench.plan, from.fittingId);
  const start = fitting === undefined ? null : placeOn(fitting, sheetId);
  if (start === null) return { name: 'run.idle' };
  return { name: 'run.drawing', trace: { sheetId, from, start, bends: [] }, stroke: [] };
}
