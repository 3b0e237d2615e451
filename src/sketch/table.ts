/** Everything of one sketch that lives as long as it: panes, input, hand. Made once, shared by both panes. */
import type { Desk, PaneId } from '../desk/desk.ts';
import { moveCamera } from './cameras.ts';
import { type Clock, pageClock } from './input/clock.ts';
import type { Gesture } from './input/gestures.ts';
import { Input } from './input/input.ts';
import { Panes } from './panes.ts';
import { Drafts, type Frames, pageFrames } from './tools/drafts.ts';
import { Hand } from './tools/hand.ts';
import { Workbench } from './tools/workbench.ts';

export interface Table {
  desk: Desk;
  panes: Panes;
  input: Input<PaneId>;
  hand: Hand;
}

export function createTable(desk: Desk, clock: Clock = pageClock, frames: Frames = pageFrames): Table {
  const panes = new Panes(desk);
  const hand = new Hand(new Workbench(desk, panes, new Drafts(desk, frames)));
  const zoom = ({ surface, factor, ...grip }: Extract<Gesture<PaneId>, { kind: 'pinch' }>): void => {
    const size = panes.sizeOf(surface);
    if (size === null) return;
    const [from, to] = [panes.inPane(surface, grip.from), panes.inPane(surface, grip.to)];
    moveCamera(desk, surface, size, { from, to, factor });
  };
  const heard = (gesture: Gesture<PaneId>): void => {
    // zoom by button and key goes to the pane that was touched last
    if (desk.getState().pane !== gesture.surface) desk.setState({ pane: gesture.surface });
    if (gesture.kind === 'pinch') zoom(gesture);
    else hand.tell(gesture);
  };
  return { desk, panes, input: new Input<PaneId>(heard, clock), hand };
}
