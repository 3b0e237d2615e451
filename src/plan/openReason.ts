import type { TEXT_CODES } from './schema.ts';

/** Why a text is not opened as a plan. The words room has a sentence for each: what, where, what to do. */
export type OpenCode =
  // the text
  | 'empty'
  | 'tooLarge'
  | 'truncated'
  | 'notJson'
  | 'tooDeep'
  | 'tooMany'
  | 'duplicateKey'
  // the kind of file
  | 'notAPlan'
  | 'noVersion'
  | 'newerVersion'
  | 'olderVersion'
  | 'migrationFailed'
  // the schema
  | 'missingKey'
  | 'unknownKey'
  | 'wrongType'
  | 'notFinite'
  | 'tooSmall'
  | 'tooBig'
  | 'notAllowed'
  | 'textTooLong'
  | 'listTooLong'
  | 'listTooShort'
  | (typeof TEXT_CODES)[number]
  // what the parts say of each other
  | 'duplicateId'
  | 'duplicateTerminal'
  | 'duplicateFamily'
  | 'unknownSheet'
  | 'unknownFitting'
  | 'unknownTerminal'
  | 'unknownGauge'
  | 'unknownFamily'
  | 'endOffSheet'
  | 'sameSheet'
  | 'selfJoin';

/**
 * `where` is the path in the file, such as 'fittings[3].at.xM', or '' for the whole of it; `params.name` is what the
 * fitting, run or sheet there is called, when it has a name.
 */
export interface OpenReason {
  readonly code: OpenCode;
  readonly where: string;
  readonly params: Readonly<Record<string, string | number>>;
}

const EXCERPT_LENGTH = 60;

/** What was found, short and printable: a hostile file may hold a megabyte there, or half a character. */
export function excerpt(found: string): string {
  const short = found.length > EXCERPT_LENGTH ? `${found.slice(0, EXCERPT_LENGTH)}…` : found;
  return short.replace(/\p{Surrogate}|\p{Control}/gu, '\uFFFD');
}
