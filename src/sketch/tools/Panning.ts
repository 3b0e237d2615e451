import { moveCamera } from '../cameras.ts';
import type { HandEvent, HandState, StateNamed } from './state.ts';
import type { Workbench } from './workbench.ts';

/** The sheet is under the finger: it follows. */
export function panning(
  state: StateNamed<'panning'>,
  event: HandEvent,
  bench: Pick<Workbench, 'desk' | 'panes'>,
): HandState {
  if (event.kind !== 'dragMove' && event.kind !== 'dragEnd') return state;
  const size = bench.panes.sizeOf(state.pane);
  if (size !== null) {
    const [from, to] = [state.last, event.at].map((point) => bench.panes.inPane(state.pane, point));
    if (from !== undefined && to !== undefined) moveCamera(bench.desk, state.pane, size, { from, to, factor: 1 });
  }
  return event.kind === 'dragEnd' ? state.back : { ...state, last: event.at };
}
