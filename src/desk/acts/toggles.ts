import type { Act } from './act.ts';

export const toggleSnap: Act = {
  id: 'toggleSnap',
  keys: ['s'],
  allowed: () => true,
  run: (desk) => desk.setState(({ snap }) => ({ snap: !snap })),
};

export const toggleBigFingers: Act = {
  id: 'toggleBigFingers',
  keys: [],
  allowed: () => true,
  run: (desk) => desk.setState(({ bigFingers }) => ({ bigFingers: !bigFingers })),
};

/** Which pane keys work in; where only one has room it is the one shown. */
export const swapPane: Act = {
  id: 'swapPane',
  keys: ['v'],
  allowed: () => true,
  run: (desk) => desk.setState(({ pane }) => ({ pane: pane === 'whole' ? 'bay' : 'whole' })),
};
