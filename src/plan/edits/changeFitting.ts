import { fittingById } from '../byId.ts';
import { assumedEfficiency } from '../newFitting.ts';
import type { Fitting, FittingKind, FittingOf, Plan } from '../schema.ts';
import { terminalsOf } from '../terminals.ts';
import { withFitting } from './replaced.ts';

type Fixed = 'id' | 'kind' | 'sheetId' | 'at';

/** What may be changed of a fitting; its place is moved, its kind and id are for ever. */
export type FittingPatch = { [K in FittingKind]: Partial<Omit<FittingOf<K>, Fixed>> }[FittingKind];

/**
 * Changes what a fitting is, not where it is: a locked fitting too. A block cannot lose an output that a run is joined
 * to (`removeOutput` takes both), nor an amplifier its second pair of terminals. An efficiency that is still assumed
 * follows the amplifier's class.
 */
export function changeFitting(plan: Plan, id: string, patch: FittingPatch): Plan {
  const fitting = fittingById(plan, id);
  if (fitting === undefined) return plan;
  const { id: _, kind, sheetId, at } = fitting;
  const changed = { ...fitting, ...patch, ...efficiencyOfClass(fitting, patch), id, kind, sheetId, at };
  const after = withFitting(plan, fitting, changed);
  return keepsItsRuns(after, id) ? after : plan;
}

function efficiencyOfClass(fitting: Fitting, patch: FittingPatch): FittingPatch {
  if (fitting.kind !== 'amplifier' || !('ampClass' in patch) || patch.ampClass === undefined) return {};
  if (patch.ampClass === fitting.ampClass || 'efficiency' in patch) return {};
  return fitting.efficiency.origin === 'assumed' ? { efficiency: assumedEfficiency(patch.ampClass) } : {};
}

function keepsItsRuns(plan: Plan, id: string): boolean {
  const fitting = fittingById(plan, id);
  if (fitting?.kind !== 'block' && fitting?.kind !== 'amplifier') return true;
  const terminals = terminalsOf(fitting);
  return plan.runs
    .flatMap(({ from, to }) => [from, to])
    .every((end) => end.fittingId !== id || terminals.includes(end.terminal));
}
