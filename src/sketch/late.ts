/**
 * What a sketch does without until its first picture is painted: the hand, and what is shown of what it does. Fetched
 * by itself as soon as there is a sketch (`loadLate.ts`), all of it together, so that the first touch waits for nothing.
 */
import type { Desk } from '../desk/desk.ts';
import type { Frames } from '../desk/frames.ts';
import { Holding } from './holding.ts';
import type { Clock } from './input/clock.ts';
import type { Panes } from './panes.ts';
import { Drafts } from './tools/drafts.ts';
import { Hand, type HandStore } from './tools/hand.ts';
import { Workbench } from './tools/workbench.ts';

export { besideThese } from '../drawing/lanes.ts';
export { sideBySide } from '../drawing/sideBySide.ts';
export { FindingInView } from './FindingInView.tsx';
export { drawingOf } from './handDrawing.ts';
export { withMoreLabels } from './moreLabels.ts';
export { MovingLabels } from './movingLabels.ts';
export { OverPane } from './OverPane.tsx';
export { paintHandMarks } from './paint/handMarks.ts';
export { paintLocks } from './paint/locks.ts';
export { paintBendMarks, paintFittingMarks, paintRunMarks, spokenOf } from './paint/marks.ts';
export { Strip } from './Strip.tsx';

interface Around {
  desk: Desk;
  panes: Panes;
  clock: Clock;
  frames: Frames;
  /** Where the hand shows what it does. */
  store: HandStore;
}

export function takeUpHand({ desk, panes, clock, frames, store }: Around): { hand: Hand; holding: Holding } {
  const bench = new Workbench(desk, panes, new Drafts(desk, frames));
  const hand = new Hand(bench, store);
  return { hand, holding: new Holding(bench, hand, clock, frames) };
}
