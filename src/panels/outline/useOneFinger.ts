import { type PointerEvent, useRef, useState } from 'react';
import { isPalm } from '../../look/palm.ts';

interface Hand<T> {
  /** What a finger that comes down takes hold of; null for nothing. */
  take: (event: PointerEvent) => T | null;
  move: (held: T, event: PointerEvent) => T;
  /** The finger has let go of what it held. */
  leave: (held: T) => void;
}

/** Who is down, and what the one finger holds. */
interface Contacts<T> {
  down: readonly { id: number; isPen: boolean }[];
  held: { by: number; what: T } | null;
}

/**
 * One finger holds one thing. A second finger, the side of a hand or the system takes it away, and it is not held again
 * until every finger has left; a hand that rests beside a pen counts for nothing.
 */
export function useOneFinger<T>({ take, move, leave }: Hand<T>) {
  // what is held now: an event may come before the state of the one before it is rendered
  const now = useRef<Contacts<T>>({ down: [], held: null });
  const [held, setHeld] = useState<T | null>(null);

  const hold = (next: Contacts<T>['held']) => {
    now.current.held = next;
    setHeld(next === null ? null : next.what);
  };
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    const isPen = event.pointerType === 'pen';
    const isUnderPen = event.pointerType === 'touch' && now.current.down.some((other) => other.isPen);
    if (isUnderPen) return;
    if (isPalm(event)) {
      hold(null);
      return;
    }
    const others = isPen ? [] : now.current.down;
    now.current.down = [...others, { id: event.pointerId, isPen }];
    event.currentTarget.setPointerCapture(event.pointerId);
    const taken = others.length > 0 ? null : take(event);
    hold(taken === null ? null : { by: event.pointerId, what: taken });
  };
  const moved = (event: PointerEvent) => {
    const { held: holding } = now.current;
    if (holding?.by !== event.pointerId) return;
    hold(isPalm(event) ? null : { ...holding, what: move(holding.what, event) });
  };
  /** Gone for whatever reason; what this pointer held is held no more. */
  const gone = ({ pointerId }: PointerEvent): T | null => {
    const { held: holding } = now.current;
    now.current.down = now.current.down.filter(({ id }) => id !== pointerId);
    if (holding?.by !== pointerId) return null;
    hold(null);
    return holding.what;
  };
  const up = (event: PointerEvent) => {
    const left = gone(event);
    if (left !== null) leave(left);
  };
  return {
    held,
    on: {
      onPointerDown: down,
      onPointerMove: moved,
      onPointerUp: up,
      onPointerCancel: gone,
      onLostPointerCapture: gone,
    },
  };
}
