/**
 * The hand: which state it is in, and what each event makes of it. What the states are is plain data, so that a test
 * drives the hand by pointer events and reads the names.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { ConnectRefusal } from '../../desk/connect.ts';
import type { PaneId } from '../../desk/desk.ts';
import type { FittingKind } from '../../plan/schema.ts';
import type { ClientPoint, Device } from '../input/gestures.ts';
import type { Guide } from '../snap.ts';
import { draggingBend } from './move/DraggingBend.ts';
import { draggingEnd } from './move/DraggingEnd.ts';
import { draggingFitting } from './move/DraggingFitting.ts';
import { idle as moveIdle } from './move/Idle.ts';
import { pickingTerminal as pickingEnd } from './move/PickingTerminal.ts';
import { pressed } from './move/Pressed.ts';
import { panning } from './Panning.ts';
import { aiming, putBack } from './place/Aiming.ts';
import { beginAiming, idle as placeIdle } from './place/Idle.ts';
import { isIn, restOf } from './rest.ts';
import { drawing } from './run/Drawing.ts';
import { idle as runIdle } from './run/Idle.ts';
import { pickingTerminal } from './run/PickingTerminal.ts';
import type { HandEvent, HandState, RestState } from './state.ts';
import type { Workbench } from './workbench.ts';

/** Where the finger is, for the figures beside it. */
export interface FingerAt {
  pane: PaneId;
  at: ClientPoint;
  device: Device;
}

/** What the panes show of the hand, beside the draft on the desk. */
export interface HandView {
  state: HandState;
  finger: FingerAt | null;
  guides: readonly Guide[];
  refusal: ConnectRefusal | null;
}

export type HandStore = StoreApi<HandView>;

function step(state: HandState, event: HandEvent, bench: Workbench): HandState {
  switch (state.name) {
    case 'move.idle':
      return moveIdle(state, event, bench);
    case 'move.pressed':
      return pressed(state, event, bench);
    case 'move.draggingFitting':
      return draggingFitting(state, event, bench);
    case 'move.draggingBend':
      return draggingBend(state, event, bench);
    case 'move.draggingEnd':
      return draggingEnd(state, event, bench);
    case 'move.pickingTerminal':
      return pickingEnd(state, event, bench);
    case 'run.idle':
      return runIdle(state, event, bench);
    case 'run.pickingTerminal':
      return pickingTerminal(state, event, bench);
    case 'run.drawing':
      return drawing(state, event, bench);
    case 'place.idle':
      return placeIdle(state, event, bench);
    case 'place.aiming':
      return aiming(state, event, bench);
    case 'panning':
      return panning(state, event, bench);
  }
}

/** What a cancelled finger leaves behind: bends that stand keep standing, everything it was doing is dropped. */
function afterCancel(state: HandState, bench: Workbench): HandState {
  switch (state.name) {
    case 'run.drawing':
      return { ...state, stroke: [] };
    case 'run.pickingTerminal':
    case 'move.pickingTerminal':
      return state;
    case 'place.aiming':
      return putBack(state, bench);
    case 'panning':
      return state.back;
    default:
      return restOf(state.name.split('.')[0] as 'move' | 'run' | 'place');
  }
}

const isRest = (state: HandState): state is RestState =>
  state.name === 'move.idle' ||
  state.name === 'run.idle' ||
  state.name === 'run.drawing' ||
  state.name === 'place.idle';

/** Where the finger is, while it is down. */
function fingerOf(event: HandEvent): FingerAt | null {
  switch (event.kind) {
    case 'press':
    case 'longPress':
    case 'dragStart':
    case 'dragMove':
      return { pane: event.surface, at: event.at, device: event.device };
    default:
      return null;
  }
}

export class Hand {
  constructor(
    private readonly bench: Workbench,
    readonly store: HandStore,
  ) {}

  /** A gesture, or a button over the sketch. */
  tell(event: HandEvent): void {
    const { state } = this.store.getState();
    if (event.kind === 'cancel') {
      this.bench.drafts.cancel();
      this.#show(afterCancel(state, this.bench), null);
      return;
    }
    this.bench.refusal = null;
    this.#show(step(state, event, this.bench), fingerOf(event));
  }

  /** A kind was dragged off the shelf: the hand aims with it, and goes back to what it was if it is not placed. */
  carry(kind: FittingKind): void {
    const { state } = this.store.getState();
    const rest = afterCancel(state, this.bench);
    this.bench.drafts.cancel();
    const carried = { hand: this.bench.desk.getState().hand, rest: isRest(rest) ? rest : restOf('move') };
    this.bench.desk.setState({ hand: { way: 'place', fitting: kind } });
    this.#show(beginAiming(kind, this.bench, carried), null);
  }

  /** Another way of the hand was chosen: what was begun in the old one is dropped. */
  changeWay(way: 'move' | 'run' | 'place'): void {
    const { state } = this.store.getState();
    if (isIn(way, state)) return;
    this.bench.drafts.cancel();
    this.#show(restOf(way), null);
  }

  /** Another sheet was opened: what was begun on the one before is dropped. */
  changeSheet(sheetId: string): void {
    const { state } = this.store.getState();
    const trace = 'trace' in state ? state.trace : null;
    const isHere = trace !== null ? trace.sheetId === sheetId : state.name.endsWith('.idle');
    if (isHere) return;
    this.bench.drafts.cancel();
    this.#show(restOf(this.bench.desk.getState().hand.way), null);
  }

  #show(state: HandState, finger: FingerAt | null): void {
    if (finger === null) this.bench.rest();
    this.store.setState({ state, finger, guides: this.bench.guides, refusal: this.bench.refusal });
  }
}
