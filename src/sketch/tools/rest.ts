/** The hand before a finger has come down, and in which of its ways it is. */
import type { Hand as HandOnDesk } from '../../desk/desk.ts';
import type { HandView } from './hand.ts';
import type { HandState, RestState } from './state.ts';

type Way = HandOnDesk['way'];

export const restOf = (way: Way): RestState => ({ name: `${way}.idle` });

/** Panning goes back to the way it came from. */
export const isIn = (way: Way, state: HandState): boolean =>
  (state.name === 'panning' ? state.back : state).name.startsWith(`${way}.`);

export const AT_REST: HandView = { state: restOf('move'), finger: null, guides: [], refusal: null };
