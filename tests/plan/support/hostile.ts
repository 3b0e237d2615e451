import { openPlan } from '../../../src/plan/open.ts';
import { savePlan } from '../../../src/plan/save.ts';
import { sampleVan } from './samplePlan.ts';

/** The text of the sample plan, to be spoilt in one place. */
export const text = savePlan(sampleVan());

/** The sample's text with one thing replaced; throws when it was not there to replace. */
export function replaced(from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`The sample holds no ${from}`);
  return text.replace(from, () => to);
}

export type Raw = { [key: string]: Raw };

/** The sample's text with one part of the parsed document changed. */
export function changed(change: (document: Raw) => void): string {
  const document = JSON.parse(text);
  change(document);
  return JSON.stringify(document);
}

/** The sample's text with the value at a path replaced by a piece of JSON. */
export function withAt(path: string, json: string): string {
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  return changed((document) => {
    const owner = keys.reduce((part, key) => part[key] ?? {}, document);
    owner[last] = '\u0000here' as unknown as Raw;
  }).replace(JSON.stringify('\u0000here'), () => json);
}

export function reasonFor(hostile: string) {
  const result = openPlan(hostile);
  if (result.ok) throw new Error('It was opened');
  return result.reason;
}

export const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`;
