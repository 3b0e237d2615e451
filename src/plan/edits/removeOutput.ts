import { fittingById, runsAt } from '../byId.ts';
import type { Plan, TerminalRef } from '../schema.ts';
import { withFitting } from './replaced.ts';

/** Takes an output off a distribution block, with the runs joined to it. The last output stays; so does a locked run. */
export function removeOutput(plan: Plan, blockId: string, terminal: string): Plan {
  const block = fittingById(plan, blockId);
  if (block?.kind !== 'block' || block.locked) return plan;
  const isThere = (end: TerminalRef) => end.fittingId === blockId && end.terminal === terminal;
  const runs = runsAt(plan, blockId).filter(({ from, to }) => isThere(from) || isThere(to));
  if (runs.some(({ locked }) => locked)) return plan;
  const outputs = block.outputs.filter((output) => output.terminal !== terminal);
  const after = withFitting(plan, block, { ...block, outputs });
  return after === plan ? plan : { ...after, runs: after.runs.filter((run) => !runs.includes(run)) };
}
