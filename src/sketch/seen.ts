/** The hand as the panes show it: with every frame while it drags, at once when it does something else. */
import type { Frames } from '../desk/frames.ts';
import type { HandStore, HandView } from './tools/hand.ts';

/** The same act goes on, only the finger is elsewhere. */
const isOngoing = (before: HandView, now: HandView): boolean =>
  before.finger !== null && now.finger !== null && before.state.name === now.state.name;

/**
 * Follows the hand. A move of the finger is shown together with the draft that it makes, which waits for the frame too:
 * the panes are drawn once for both.
 */
export function followHand(hand: { readonly store: HandStore }, show: (view: HandView) => void, frames: Frames): void {
  let callOff: (() => void) | null = null;
  hand.store.subscribe((now, before) => {
    if (isOngoing(before, now)) {
      callOff ??= frames(() => {
        callOff = null;
        show(hand.store.getState());
      });
      return;
    }
    callOff?.();
    callOff = null;
    show(now);
  });
}
