import type { Plan } from './schema.ts';

/** Everything in a plan that has an id, the plan itself included. */
export function* identified(plan: Plan): Generator<{ id: string; where: string }> {
  yield { id: plan.id, where: 'id' };
  for (const list of ['sheets', 'fittings', 'runs', 'areas', 'ties', 'mounts', 'pictures'] as const) {
    for (const [index, { id }] of plan[list].entries()) yield { id, where: `${list}[${index}].id` };
  }
}

/** Whether anything in the plan has that id; an id is never given twice. */
export function isIdUsed(plan: Plan, id: string): boolean {
  for (const other of identified(plan)) if (other.id === id) return true;
  return false;
}
