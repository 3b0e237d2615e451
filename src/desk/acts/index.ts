import type { Desk } from '../desk.ts';
import type { Act } from './act.ts';

/** Runs an act when it may run now; answers whether it did. */
export function runAct(desk: Desk, act: Act): boolean {
  if (!act.allowed(desk.getState())) return false;
  act.run(desk);
  return true;
}
