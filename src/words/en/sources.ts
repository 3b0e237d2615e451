import { SOURCES, type SourceId } from '../../calc/sources.ts';
import { trusts } from './assumptions.ts';

/** '33 CFR 183.425, Table 5 (published)'. */
export function sourceLine(id: SourceId): string {
  const { document, section, trust }: { document: string; section?: string; trust: keyof typeof trusts } = SOURCES[id];
  return `${section === undefined ? document : `${document}, ${section}`} (${trusts[trust]})`;
}

const isSourceId = (text: string): text is SourceId => Object.hasOwn(SOURCES, text);

/** A source as a plan holds it: an id of ours, or a note in the user's own words. */
export const sourceNote = (text: string): string => (isSourceId(text) ? sourceLine(text) : text);
