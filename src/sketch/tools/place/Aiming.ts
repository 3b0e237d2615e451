import type { PaneId } from '../../../desk/desk.ts';
import { placing } from '../../../desk/place.ts';
import { wholePlan } from '../../../desk/whole.ts';
import { INLINE_KINDS } from '../../../plan/terminals.ts';
import type { OneFinger } from '../../input/gestures.ts';
import { nearestRun } from '../nearestRun.ts';
import type { HandEvent, HandState, RestState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';

type Aiming = StateNamed<'place.aiming'>;

/** The new fitting is under the finger, live; letting go places it, beside the sheet cancels. */
export function aiming(state: Aiming, event: HandEvent, bench: Workbench): HandState {
  switch (event.kind) {
    case 'press':
    case 'dragStart':
    case 'dragMove':
      return aimedAt(state, event, bench);
    case 'tap':
    case 'release':
    case 'dragEnd':
      return placed(aimedAt(state, event, bench), bench);
    case 'back':
    case 'drop':
      bench.drafts.cancel();
      return putBack(state, bench);
    default:
      return state;
  }
}

/** Nothing was placed: a kind dragged off the shelf goes back there, one that was taken up stays in the hand. */
export function putBack({ carried }: Pick<Aiming, 'carried'>, bench: Workbench): RestState {
  if (carried === null) return { name: 'place.idle' };
  bench.desk.setState({ hand: carried.hand });
  return carried.rest;
}

function aimedAt(state: Aiming, event: OneFinger<PaneId>, bench: Workbench): Aiming {
  const pane = bench.panes.at(event.at);
  const aim = pane === null ? null : bench.aim(pane, event.at);
  bench.rest();
  if (aim === null) {
    // beside the sheet: shown as nothing, so that letting go there is seen to place nothing
    bench.drafts.show((plan) => plan);
    return { ...state, at: null, splits: null };
  }
  const plan = wholePlan(bench.desk.getState());
  const run = INLINE_KINDS.has(state.fitting.kind)
    ? nearestRun(plan, bench.sheetId, aim, bench.runReachM(aim.pxPerM))
    : null;
  const at = run === null ? bench.snap(aim, { alt: event.alt, except: state.fitting.id }) : run.at;
  const splits = run?.runId ?? null;
  bench.drafts.show(placing({ ...state.fitting, at }, splits, state.newRunId));
  return { ...state, at, splits };
}

function placed(state: Aiming, bench: Workbench): HandState {
  bench.rest();
  if (state.at === null) {
    bench.drafts.cancel();
    return putBack(state, bench);
  }
  const selection = { kind: 'fitting', id: state.fitting.id } as const;
  // refused, or dropped meanwhile by another act: the hand still places
  const isPlaced = bench.drafts.commit({ selection, hand: { way: 'move' } });
  return isPlaced ? { name: 'move.idle' } : putBack(state, bench);
}
