/** What the hand is doing, as plain data: each name is a state, its file says what happens next. */
import type { Hand as HandOnDesk, PaneId } from '../../desk/desk.ts';
import type { RunEnd } from '../../desk/reconnect.ts';
import type { Picked } from '../../drawing/pick.ts';
import type { Fitting, Point, TerminalRef } from '../../plan/schema.ts';
import type { ClientPoint, Gesture, OneFinger } from '../input/gestures.ts';

/** A run being drawn that has no end yet, so that it is no part of the plan. */
export interface Trace {
  /** The sheet it is drawn on. */
  sheetId: string;
  from: TerminalRef;
  start: Point;
  bends: readonly Point[];
}

/** What a finger can take hold of: beside what lies on the sheet, an end of the run that is picked out. */
export type Held = Picked | { kind: 'end'; runId: string; end: RunEnd; at: Point };

type MoveState =
  | { name: 'move.idle' }
  | { name: 'move.pressed'; picked: Held | null }
  | {
      name: 'move.draggingFitting';
      fittingId: string;
      home: Point;
      /** From the finger to its middle, px: as far in every pane. */
      gripPx: ClientPoint;
      act: 'moveFitting' | 'dropOnRun';
      splits: string | null;
      newRunId: string;
    }
  | { name: 'move.draggingBend'; runId: string; index: number; isNew: boolean; before: Point | null }
  /** `tip` is where the loose end is; null while it is joined for now to what the finger is on. */
  | { name: 'move.draggingEnd'; runId: string; end: RunEnd; tip: Point | null }
  | {
      name: 'move.pickingTerminal';
      runId: string;
      end: RunEnd;
      fittingId: string;
      terminals: readonly TerminalRef[];
      pane: PaneId;
    };

type RunState =
  | { name: 'run.idle' }
  | {
      name: 'run.pickingTerminal';
      fittingId: string;
      terminals: readonly TerminalRef[];
      pane: PaneId;
      trace: Trace | null;
    }
  | {
      name: 'run.drawing';
      trace: Trace /** Free-hand points of the drag under way, the tip last. */;
      stroke: readonly Point[];
    };

type PlaceState =
  | { name: 'place.idle' }
  | {
      name: 'place.aiming';
      fitting: Fitting;
      newRunId: string;
      at: Point | null;
      splits: string | null;
      carried: Carried | null;
    };

/** What the hand goes back to when a fitting dragged off the shelf is not placed. */
export interface Carried {
  hand: HandOnDesk;
  rest: RestState;
}

/** Panning is the same in every way of the hand; afterwards it goes on where it was. */
type PanningState = {
  name: 'panning';
  pane: PaneId;
  last: ClientPoint;
  back: RestState;
  /** The finger is on something that would have moved, were it not locked. */
  isLocked?: boolean;
};

/** States in which no finger is needed to stay. */
export type RestState = Extract<HandState, { name: 'move.idle' | 'run.idle' | 'run.drawing' | 'place.idle' }>;

export type HandState = MoveState | RunState | PlaceState | PanningState;

export type StateNamed<N extends HandState['name']> = Extract<HandState, { name: N }>;

/** What a state hears: one finger, the end of it, or a button over the sketch. */
export type HandEvent =
  | OneFinger<PaneId>
  | Extract<Gesture<PaneId>, { kind: 'cancel' }>
  | { kind: 'choose'; terminal: string }
  /** The run that is being drawn goes on on another sheet. */
  | { kind: 'continue'; sheetId: string }
  | { kind: 'back' }
  | { kind: 'drop' };
