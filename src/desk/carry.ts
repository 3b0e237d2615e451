/** Where the shelf and the sketch meet: a fitting dragged off the one goes on under the same finger over the other. */
import type { FittingKind } from '../plan/schema.ts';
import type { Desk } from './desk.ts';

/** Takes over the pointer of the event, which came down at `from` (client px). Answers whether it did. */
type Receive = (kind: FittingKind, event: PointerEvent, from: { xPx: number; yPx: number }) => boolean;

const receivers = new WeakMap<Desk, Receive>();

/** Registers what takes over; answers how to stop. */
export function receiveCarried(desk: Desk, receive: Receive): () => void {
  receivers.set(desk, receive);
  return () => {
    if (receivers.get(desk) === receive) receivers.delete(desk);
  };
}

/** Hands a kind and the finger that holds it to the sketch. Answers false where there is none yet. */
export function carryToSketch(
  desk: Desk,
  kind: FittingKind,
  event: PointerEvent,
  from: { xPx: number; yPx: number },
): boolean {
  return receivers.get(desk)?.(kind, event, from) ?? false;
}
