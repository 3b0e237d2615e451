import * as v from 'valibot';
import { type Plan, planSchema } from '../schema.ts';

/** Gives the plan another name, of at most 200 characters. */
export function renamePlan(plan: Plan, name: string): Plan {
  return name === plan.name || !v.is(planSchema.entries.name, name) ? plan : { ...plan, name };
}
