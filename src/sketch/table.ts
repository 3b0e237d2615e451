/** Everything of one sketch that lives as long as it: panes, input, hand. Made once, shared by both panes. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Desk, PaneId } from '../desk/desk.ts';
import { type Frames, pageFrames } from '../desk/frames.ts';
import type { FittingKind } from '../plan/schema.ts';
import { moveCamera } from './cameras.ts';
import { Changes } from './changes.ts';
import { type Clock, pageClock } from './input/clock.ts';
import type { ClientPoint, Gesture } from './input/gestures.ts';
import { Input } from './input/input.ts';
import { LateHand } from './lateHand.ts';
import { type Late, type LateSource, pageLate } from './loadLate.ts';
import { Panes } from './panes.ts';
import { followHand } from './seen.ts';
import type { HandView } from './tools/hand.ts';

export interface Table {
  desk: Desk;
  panes: Panes;
  input: Input<PaneId>;
  hand: LateHand;
  /** What is shown of what the hand does; null until it has been fetched. */
  late: StoreApi<Late | null>;
  /** The hand as the panes show it. */
  seen: StoreApi<HandView>;
  /** What the gesture under way changes. */
  changes: Changes;
  /** A fitting dragged off the shelf: its finger goes on here. Answers false while no pane is seen. */
  carryIn(kind: FittingKind, event: PointerEvent, from: ClientPoint): boolean;
}

export function createTable(
  desk: Desk,
  clock: Clock = pageClock,
  frames: Frames = pageFrames,
  source: LateSource = pageLate,
): Table {
  const panes = new Panes(desk);
  const hand = new LateHand(desk, panes, clock, frames, source);
  const seen = createStore<HandView>(() => hand.store.getState());
  followHand(hand, (view) => seen.setState(view, true), frames);
  const zoom = ({ surface, factor, ...grip }: Extract<Gesture<PaneId>, { kind: 'pinch' }>): void => {
    const size = panes.sizeOf(surface);
    if (size === null) return;
    const [from, to] = [panes.inPane(surface, grip.from), panes.inPane(surface, grip.to)];
    moveCamera(desk, surface, size, { from, to, factor });
  };
  const heard = (gesture: Gesture<PaneId>): void => {
    if (gesture.kind !== 'dragMove' && gesture.kind !== 'dragEnd') panes.lookAnew();
    // zoom by button and key goes to the pane that was touched last
    if (desk.getState().pane !== gesture.surface) desk.setState({ pane: gesture.surface });
    if (gesture.kind === 'pinch') zoom(gesture);
    else hand.tell(gesture);
    hand.holding?.heard(gesture);
  };
  const input = new Input<PaneId>(heard, clock);
  const carryIn = (kind: FittingKind, event: PointerEvent, from: ClientPoint): boolean => {
    const pane = panes.any();
    if (pane === null) return false;
    input.takeAway();
    hand.carry(kind);
    input.adopt(event, pane.element, pane.id, from);
    return true;
  };
  return { desk, panes, input, hand, late: hand.late, seen, changes: new Changes(), carryIn };
}
