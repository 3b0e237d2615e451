import { connect } from '../../../desk/connect.ts';
import type { TerminalRef } from '../../../plan/schema.ts';
import type { HandState, Trace } from '../state.ts';
import type { Workbench } from '../workbench.ts';

/** Ends the run at a terminal: one step of history. What the plan refuses leaves the run as it was being drawn. */
export function finish(trace: Trace, to: TerminalRef, bench: Workbench): HandState {
  const result = connect(bench.desk, trace.from, to, trace.bends, null, '', trace.sheetId);
  if (result.ok || result.reason === 'gone') return { name: 'run.idle' };
  bench.refuse(result.reason);
  return { name: 'run.drawing', trace, stroke: [] };
}
