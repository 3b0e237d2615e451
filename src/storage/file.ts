/** Plans as files: saved by a download, opened from what the user picks or drags in. */
import { MAX_TEXT, openPlan } from '../plan/open.ts';
import type { OpenReason } from '../plan/openReason.ts';
import { savePlan } from '../plan/save.ts';
import type { Plan } from '../plan/schema.ts';

const EXTENSION = '.plan.json';
/** Longest part taken from the plan's name: well under every file system's limit, also in four-byte letters. */
const MAX_STEM = 60;
/** No text within the limit is longer: one UTF-16 unit of it takes at most three bytes of UTF-8. */
const MAX_FILE_BYTES = 3 * MAX_TEXT;
/** A download reads its blob after the click; by then the address has to be there still. */
const REVOKE_AFTER_MS = 60_000;

/** The file name for a plan: letters and digits of any script, with everything else as a hyphen. */
export function planFileName(planName: string): string {
  const stem = [...planName.normalize('NFC').replace(/[^\p{L}\p{M}\p{N}_]+/gu, '-')].slice(0, MAX_STEM).join('');
  const trimmed = stem.replace(/^-+|-+$/g, '');
  return `${trimmed === '' ? 'plan' : trimmed}${EXTENSION}`;
}

/** Hands the plan to the browser as a download, in the same canonical text that autosave keeps. Answers the name. */
export function savePlanFile(plan: Plan, page: Document): string {
  const fileName = planFileName(plan.name);
  const address = URL.createObjectURL(new Blob([savePlan(plan)], { type: 'application/json' }));
  const link = page.createElement('a');
  link.href = address;
  link.download = fileName;
  page.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), REVOKE_AFTER_MS);
  return fileName;
}

/** A file can also fail before its text is seen: gone since it was picked, or the card pulled out. */
type FileReason = Omit<OpenReason, 'code'> & { readonly code: OpenReason['code'] | 'unreadable' };

export type OpenFileResult = { ok: true; plan: Plan } | { ok: false; reason: FileReason };

/** Reads a picked or dropped file through the same way in as every plan; too large a file is refused unread. */
export async function openPlanFile(file: File): Promise<OpenFileResult> {
  if (file.size > MAX_FILE_BYTES) {
    return { ok: false, reason: { code: 'tooLarge', where: '', params: { limit: MAX_FILE_BYTES, found: file.size } } };
  }
  try {
    return openPlan(await file.text());
  } catch {
    return { ok: false, reason: { code: 'unreadable', where: '', params: {} } };
  }
}
