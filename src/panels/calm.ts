/**
 * The desk as panels hear of it: a frame of a drag that is not answered for yet is none of their business. Of one that is
 * they hear a little later: the finger comes first, and the sketch has its own work with an answer.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { Desk, DeskState } from '../desk/desk.ts';
import type { Frames } from '../desk/frames.ts';

type Calm = Pick<StoreApi<DeskState>, 'getState' | 'getInitialState' | 'subscribe'>;
type Listener = Parameters<Calm['subscribe']>[0];

/** Whether only the draft has become another one, and panels show the answer to the one before still. */
function isNextFrame(now: DeskState, before: DeskState): boolean {
  if (now.draft === null || before.draft === null || now.answered === null) return false;
  return (Object.keys(now) as (keyof DeskState)[]).every((name) => name === 'draft' || now[name] === before[name]);
}

/** Some frames of the finger later, ms: after labels have been laid out for it, for which the sketch takes a frame of its own. */
const LATER_MS = 110;

const later: Frames = (run) => {
  const due = setTimeout(run, LATER_MS);
  return () => clearTimeout(due);
};

export function calm(desk: Desk, frames: Frames = later): Calm {
  const listeners = new Set<Listener>();
  let heard = desk.getState();
  let callOff: (() => void) | null = null;
  const tell = (): void => {
    callOff?.();
    callOff = null;
    const [now, before] = [desk.getState(), heard];
    heard = now;
    for (const listener of listeners) listener(now, before);
  };
  // one ear for all of them: each frame would have to ask each otherwise
  desk.subscribe((now, before) => {
    if (isNextFrame(now, before)) return;
    if (now.draft === null || before.draft === null) tell();
    else callOff ??= frames(tell);
  });
  return {
    getState: desk.getState,
    getInitialState: desk.getInitialState,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const known = new WeakMap<Desk, Calm>();

/** One for each desk. Its state is the desk's own: what is read of it is never old. */
export function calmOf(desk: Desk): Calm {
  const before = known.get(desk);
  if (before !== undefined) return before;
  const made = calm(desk);
  known.set(desk, made);
  return made;
}
