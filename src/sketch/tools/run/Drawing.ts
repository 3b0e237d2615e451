import type { PaneId } from '../../../desk/desk.ts';
import { continueOn } from '../../../desk/sheets.ts';
import { distance } from '../../../geom/point.ts';
import { simplify } from '../../../geom/simplify.ts';
import { fittingById } from '../../../plan/byId.ts';
import { roundPoint } from '../../../plan/round.ts';
import { MAX_BENDS, type Point } from '../../../plan/schema.ts';
import { defaultName } from '../../../words/index.ts';
import { nearestPane } from '../../nearestPane.ts';
import type { HandEvent, HandState, StateNamed, Trace } from '../state.ts';
import { endsAt } from '../terminals.ts';
import type { Aim, Workbench } from '../workbench.ts';
import { finish } from './finish.ts';
import { drawingFrom } from './Idle.ts';

type Drawing = StateNamed<'run.drawing'>;

/** A hand-drawn line is kept to this, screen px: finer is the trembling of the hand. */
const FREEHAND_PX = 7;
/** A drag that begins this near to the end of the line goes on from there, screen px. */
const GO_ON_PX = 24;

/** A run has begun: taps set bends, a drag draws free-hand, a terminal ends it. */
export function drawing(state: Drawing, event: HandEvent, bench: Workbench): HandState {
  const { trace } = state;
  // an undo may have taken away the fitting at which it began
  if (fittingById(bench.plan, trace.from.fittingId) === undefined) return { name: 'run.idle' };
  switch (event.kind) {
    case 'continue':
      return continued(state, event.sheetId, bench);
    case 'back':
      return stepBack(state);
    case 'drop':
      return { name: 'run.idle' };
    case 'tap':
      return tapped(state, bench.aim(event.surface, event.at), event.surface, event.alt, bench);
    case 'dragStart':
      return stroked(state, bench.aim(event.surface, event.from), bench.aimInSight(event.surface, event.at));
    case 'dragMove':
      return stroked(state, null, bench.aimInSight(event.surface, event.at));
    case 'dragEnd':
      return ended(
        state,
        bench.aimInSight(event.surface, event.at),
        nearestPane(bench.panes, event.at, event.surface),
        event.alt,
        bench,
      );
    default:
      return state;
  }
}

/** Ends here in a point of two sheets, and goes on from that point on the other. */
function continued(state: Drawing, sheetId: string, bench: Workbench): HandState {
  const fittingId = continueOn(bench.desk, state.trace, sheetId, defaultName('continuation', bench.plan));
  if (fittingId !== null) return drawingFrom({ fittingId, terminal: 'through' }, bench);
  bench.refuse('refused');
  return state;
}

function stepBack({ trace }: Drawing): HandState {
  if (trace.bends.length === 0) return { name: 'run.idle' };
  return { name: 'run.drawing', trace: { ...trace, bends: trace.bends.slice(0, -1) }, stroke: [] };
}

/** A bend, or the end when there is a fitting under the finger. */
function tapped(state: Drawing, aim: Aim | null, pane: PaneId, alt: boolean, bench: Workbench): HandState {
  if (aim === null) return state;
  const end = endUnder(state.trace, aim, pane, bench);
  if (end !== null) return end;
  return { ...state, trace: withBends(state.trace, [snapped(state.trace, aim, alt, bench)]), stroke: [] };
}

/** Where the run ends when the finger is on a fitting: joined, or its terminals to choose from; null when on none. */
function endUnder(trace: Trace, aim: Aim, pane: PaneId, bench: Workbench): HandState | null {
  const picked = bench.pick(aim, true);
  if (picked?.kind !== 'fitting' && picked?.kind !== 'terminal') return null;
  const fittingId = picked.kind === 'fitting' ? picked.fittingId : picked.ref.fittingId;
  if (fittingId === trace.from.fittingId) return { name: 'run.drawing', trace, stroke: [] };
  const terminals = endsAt(bench.plan, trace.from, fittingId);
  const [only, ...others] = terminals;
  if (only === undefined) {
    bench.refuse('alreadyJoined');
    return { name: 'run.drawing', trace, stroke: [] };
  }
  return others.length === 0
    ? finish(trace, only, bench)
    : { name: 'run.pickingTerminal', fittingId, terminals, pane, trace };
}

/** The stroke goes on to the finger. It begins at the end of the line when that is where the finger came down. */
function stroked(state: Drawing, began: Aim | null, now: Aim | null): HandState {
  if (now === null) return state;
  if (began === null) return { ...state, stroke: [...state.stroke, now.at] };
  const goesOn = distance(lastOf(state.trace), began.at) * began.pxPerM <= GO_ON_PX;
  return { ...state, stroke: goesOn ? [now.at] : [began.at, now.at] };
}

function ended(state: Drawing, aim: Aim | null, pane: PaneId, alt: boolean, bench: Workbench): HandState {
  // a drag that was begun for something else, such as opening tabs
  if (aim === null || state.stroke.length === 0) return { ...state, stroke: [] };
  const line = simplify([lastOf(state.trace), ...state.stroke, aim.at], FREEHAND_PX / aim.pxPerM).slice(1);
  const inner = withBends(state.trace, line.slice(0, -1));
  const end = endUnder(inner, aim, pane, bench);
  if (end !== null) return end;
  return { name: 'run.drawing', trace: withBends(inner, [snapped(inner, aim, alt, bench)]), stroke: [] };
}

const lastOf = ({ start, bends }: Trace): Point => bends.at(-1) ?? start;

const withBends = (trace: Trace, bends: readonly Point[]): Trace => ({
  ...trace,
  // rounded as the plan will round them, so that what is seen is what is kept
  bends: [...trace.bends, ...bends.map(roundPoint)].slice(0, MAX_BENDS),
});

function snapped(trace: Trace, aim: Aim, alt: boolean, bench: Workbench): Point {
  const point = bench.snap(aim, { alt, from: lastOf(trace) });
  bench.rest();
  return point;
}
