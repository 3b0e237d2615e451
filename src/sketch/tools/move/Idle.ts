import { endUnder } from '../runEnds.ts';
import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';

/** Nothing is held. */
export function idle(state: StateNamed<'move.idle'>, event: HandEvent, bench: Workbench): HandState {
  if (event.kind !== 'press') return state;
  const aim = bench.aim(event.surface, event.at);
  if (aim === null) return { name: 'move.pressed', picked: null };
  const picked = bench.pick(aim);
  return { name: 'move.pressed', picked: endUnder(bench, aim, picked) ?? picked };
}
