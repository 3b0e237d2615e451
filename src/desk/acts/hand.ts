import type { FittingKind } from '../../plan/schema.ts';
import type { Hand } from '../desk.ts';
import { cancelGesture } from '../edit.ts';
import type { Act } from './act.ts';

const takeUp = (id: string, keys: readonly string[], hand: Hand): Act => ({
  id,
  keys,
  allowed: () => true,
  run: (desk) => {
    cancelGesture(desk);
    desk.setState({ hand });
  },
});

export const handMove = takeUp('handMove', ['m'], { way: 'move' });
export const handRun = takeUp('handRun', ['r'], { way: 'run' });

/** Kinds in the order of the shelf; the common ones have a key, the rest have none that could be remembered. */
type PlacedKind = Exclude<FittingKind, 'continuation'>;

const PLACE_KEYS: Record<PlacedKind, readonly string[]> = {
  battery: ['b'],
  fuse: ['f'],
  passThrough: ['p'],
  block: ['d'],
  amplifier: ['a'],
  ground: ['g'],
  alternator: [],
  jumpPost: [],
  takeOff: [],
  charger: [],
  capacitor: [],
  breaker: [],
  switch: [],
  relay: [],
  bus: [],
  reducer: [],
  load: [],
};

export const placeActId = (kind: FittingKind): string => `place:${kind}`;

export const handPlaces: readonly Act[] = (Object.keys(PLACE_KEYS) as PlacedKind[]).map((fitting) =>
  takeUp(placeActId(fitting), PLACE_KEYS[fitting], { way: 'place', fitting }),
);

/** Steps back: out of a gesture, else to the moving hand, else out of the selection. */
export const stepBack: Act = {
  id: 'stepBack',
  keys: ['Escape'],
  allowed: (state) =>
    state.gesture !== null || state.hand.way !== 'move' || state.selection !== null || state.findingId !== null,
  run: (desk) => {
    const { gesture, hand } = desk.getState();
    if (gesture !== null) cancelGesture(desk);
    else if (hand.way !== 'move') desk.setState({ hand: { way: 'move' } });
    else desk.setState({ selection: null, findingId: null });
  },
};
