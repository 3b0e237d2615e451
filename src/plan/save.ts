import * as v from 'valibot';
import { type Plan, planSchema } from './schema.ts';

/**
 * The text of a plan: keys in the schema's order, two spaces, a newline at the end, so that equal plans are equal bytes.
 * Throws on what is no valid plan; the edits never make one.
 */
export const savePlan = (plan: Plan): string => `${JSON.stringify(v.parse(planSchema, plan), null, 2)}\n`;
