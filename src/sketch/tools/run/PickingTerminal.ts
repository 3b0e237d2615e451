import type { HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';
import { finish } from './finish.ts';
import { drawingFrom } from './Idle.ts';

/** The terminals of a fitting stand beside it as tabs; anything but one of them closes them again. */
export function pickingTerminal(
  state: StateNamed<'run.pickingTerminal'>,
  event: HandEvent,
  bench: Workbench,
): HandState {
  const { trace } = state;
  if (event.kind === 'choose') {
    const ref = state.terminals.find(({ terminal }) => terminal === event.terminal);
    if (ref === undefined) return state;
    return trace === null ? drawingFrom(ref, bench) : finish(trace, ref, bench);
  }
  if (event.kind === 'drop') return { name: 'run.idle' };
  if (event.kind !== 'back' && event.kind !== 'tap') return state;
  return trace === null ? { name: 'run.idle' } : { name: 'run.drawing', trace, stroke: [] };
}
