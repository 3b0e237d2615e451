import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';

/** Nothing is held. */
export function idle(state: StateNamed<'move.idle'>, event: HandEvent, bench: Workbench): HandState {
  if (event.kind !== 'press') return state;
  const aim = bench.aim(event.surface, event.at);
  return { name: 'move.pressed', picked: aim === null ? null : bench.pick(aim) };
}
