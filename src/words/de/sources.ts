import { SOURCES, type SourceId } from '../../calc/sources.ts';
import { trusts } from './assumptions.ts';
import { documents, sections } from './sourceNames.ts';

const hasSection = (id: SourceId): id is keyof typeof sections => Object.hasOwn(sections, id);

/** '33 CFR 183.425, Tabelle 5 (veröffentlicht)'. */
export function sourceLine(id: SourceId): string {
  const { document, trust } = SOURCES[id];
  const named = documents[id] ?? document;
  return `${hasSection(id) ? `${named}, ${sections[id]}` : named} (${trusts[trust]})`;
}

const isSourceId = (text: string): text is SourceId => Object.hasOwn(SOURCES, text);

/** A source as a plan holds it: an id of ours, or a note in the user's own words. */
export const sourceNote = (text: string): string => (isSourceId(text) ? sourceLine(text) : text);
