/** The only way in: demo, file, drop, browser database and command line all pass here. */
import * as v from 'valibot';
import { firstFault } from './faults.ts';
import { migrate, oldestVersion } from './migrate/migrate.ts';
import { isJsonObject, type JsonObject, type Step } from './migrate/step.ts';
import { STEPS } from './migrate/steps.ts';
import { excerpt, type OpenCode, type OpenReason } from './openReason.ts';
import { scan } from './scan.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan, planSchema } from './schema.ts';
import { schemaReason } from './schemaReason.ts';

/** Characters of text; a plan with hundreds of fittings is a tenth of it. */
export const MAX_TEXT = 8 * 1024 * 1024;

export type OpenResult =
  | { readonly ok: true; readonly plan: Plan; readonly migratedFrom: number | null }
  | { readonly ok: false; readonly reason: OpenReason };

/**
 * Opens the text of a plan, bringing an older version up to date; or says why not. Never throws on any text. `steps` are
 * the migration steps: the real ones, unless a test tries others.
 */
export function openPlan(text: string, steps: readonly Step[] = STEPS): OpenResult {
  // some editors put a mark before the first character; it is no part of the text
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const before = clean.trim() === '' ? reason('empty') : sizeReason(clean);
  if (before !== null) return { ok: false, reason: before };

  const raised = raise(parse(clean), steps);
  if ('code' in raised) return { ok: false, reason: raised };
  const parsed = v.safeParse(planSchema, raised.document, { abortEarly: true });
  if (!parsed.success) return { ok: false, reason: schemaReason(parsed.issues[0]) };
  const fault = firstFault(parsed.output);
  if (fault !== null) return { ok: false, reason: fault };
  return { ok: true, plan: parsed.output, migratedFrom: raised.migratedFrom };
}

const reason = (code: OpenCode, where = '', params: OpenReason['params'] = {}): OpenReason => ({ code, where, params });

const sizeReason = (text: string): OpenReason | null =>
  text.length > MAX_TEXT ? reason('tooLarge', '', { limit: MAX_TEXT, found: text.length }) : scan(text);

/** The scan has passed it, so it parses. -0 becomes 0, which is how it would be saved. */
const parse = (text: string): unknown => JSON.parse(text, (_, value: unknown) => (value === 0 ? 0 : value));

type Raised = { readonly document: JsonObject; readonly migratedFrom: number | null };

/** The document at the newest version, or why it cannot be brought there. */
function raise(document: unknown, steps: readonly Step[]): Raised | OpenReason {
  if (!isJsonObject(document) || document.format !== PLAN_FORMAT) return reason('notAPlan', 'format');
  const { version } = document;
  if (typeof version !== 'number' || !Number.isSafeInteger(version) || version < 0) {
    return reason('noVersion', 'version', { found: excerpt(JSON.stringify(version) ?? '') });
  }
  const known = { found: version, known: PLAN_VERSION };
  if (version > PLAN_VERSION) return reason('newerVersion', 'version', known);
  if (version < oldestVersion(steps, PLAN_VERSION)) return reason('olderVersion', 'version', known);
  if (version === PLAN_VERSION) return { document, migratedFrom: null };
  try {
    return { document: migrate(document, version, steps), migratedFrom: version };
  } catch {
    // a step may rely on what its version promised; a document that breaks the promise is the file's fault
    return reason('migrationFailed', '', known);
  }
}
