/** Whether there is anything to propose: looked at with every change of a plan, so it stands apart from the rest. */
import type { FittingKind, Plan } from '../schema.ts';

const CONSUMERS: ReadonlySet<FittingKind> = new Set(['amplifier', 'load']);
const SOURCES: ReadonlySet<FittingKind> = new Set(['battery', 'jumpPost', 'takeOff']);

const known = new WeakMap<Plan, Map<string, boolean>>();

/** Whether there is anything to propose on the sheet. Asked with every change on the desk, worked out once for a plan. */
export function canPropose(plan: Plan, sheetId: string): boolean {
  const bySheet = known.get(plan) ?? new Map<string, boolean>();
  known.set(plan, bySheet);
  const before = bySheet.get(sheetId);
  if (before !== undefined) return before;
  const answer = isLacking(plan, sheetId);
  bySheet.set(sheetId, answer);
  return answer;
}

/** Something on the sheet has a supply that nothing is joined to, and a source to feed it from is there. */
function isLacking({ fittings, runs, sheets }: Plan, sheetId: string): boolean {
  if (sheets.find(({ id }) => id === sheetId)?.view !== 'above') return false;
  const here = fittings.filter((fitting) => fitting.sheetId === sheetId);
  if (!here.some(({ kind }) => SOURCES.has(kind))) return false;
  const fed = new Set(
    runs.flatMap(({ from, to }) => [from, to].map(({ fittingId, terminal }) => `${fittingId}.${terminal}`)),
  );
  return here.some((fitting) => {
    if (!CONSUMERS.has(fitting.kind)) return false;
    const isTwo = fitting.kind === 'amplifier' && fitting.supplyInputs === 'two';
    return (isTwo ? ['supply', 'supply2'] : ['supply']).some((terminal) => !fed.has(`${fitting.id}.${terminal}`));
  });
}
