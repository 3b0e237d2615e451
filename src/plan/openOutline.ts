import * as v from 'valibot';
import { type Outline, outlineSchema } from './schema.ts';

/** An outline that was kept apart from a plan, held against the schema; null for anything else. */
export function openOutline(kept: unknown): Outline | null {
  const { success, output } = v.safeParse(outlineSchema, kept);
  return success ? output : null;
}
