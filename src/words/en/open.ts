/** Why a file was not opened: what, where, and what to do, in one line. */
import type { OpenCode } from '../../plan/openReason.ts';

type Params = Readonly<Record<string, string | number>>;

interface OpenWords {
  what(params: Params): string;
  remedy: string;
}

const EARLIER = 'Open an earlier copy of the file.';
const CHOOSE = 'Choose a plan saved from this page.';
const RELOAD = 'Reload this page to get its newest version, then open the file again.';

const told = (params: Params, name: string, otherwise: string): string => {
  const value = params[name];
  return value === undefined || value === '' ? otherwise : String(value);
};
const quoted = (params: Params, name: string): string => `'${told(params, name, '?')}'`;

const REASONS: Readonly<Record<OpenCode | 'unreadable', OpenWords>> = {
  unreadable: {
    what: () => 'the browser cannot read the file',
    remedy: 'Copy it onto this device, then open it again.',
  },
  empty: { what: () => 'the file is empty', remedy: EARLIER },
  tooLarge: { what: () => 'the file is larger than any plan', remedy: CHOOSE },
  truncated: {
    what: () => 'the file stops in the middle',
    remedy: 'Copy or download it again, or open an earlier copy.',
  },
  notJson: {
    what: (params) => {
      const line = told(params, 'line', '');
      return `it is not the text of a plan${line === '' ? '' : ` (line ${line}, sign ${told(params, 'column', '?')})`}`;
    },
    remedy: EARLIER,
  },
  tooDeep: { what: () => 'it is nested deeper than any plan', remedy: CHOOSE },
  tooMany: { what: () => 'it holds more than a plan may', remedy: CHOOSE },
  duplicateKey: { what: (params) => `${quoted(params, 'key')} is given twice`, remedy: EARLIER },
  notAPlan: { what: () => 'it is not a plan of this page', remedy: CHOOSE },
  noVersion: { what: () => 'it does not say which version it is', remedy: EARLIER },
  newerVersion: {
    what: (params) => `it is version ${told(params, 'found', '?')}, and this page knows ${told(params, 'known', '?')}`,
    remedy: RELOAD,
  },
  olderVersion: { what: (params) => `version ${told(params, 'found', '?')} can no longer be read`, remedy: EARLIER },
  migrationFailed: {
    what: (params) => `version ${told(params, 'found', '?')} could not be brought up to date`,
    remedy: EARLIER,
  },
  missingKey: { what: (params) => `${quoted(params, 'key')} is missing`, remedy: EARLIER },
  unknownKey: { what: (params) => `${quoted(params, 'key')} is nothing a plan holds`, remedy: RELOAD },
  wrongType: {
    what: (params) =>
      `there is ${told(params, 'found', 'something else')} where ${told(params, 'expected', 'another kind of value')} belongs`,
    remedy: EARLIER,
  },
  notFinite: { what: (params) => `${told(params, 'found', 'a value')} is no number`, remedy: EARLIER },
  tooSmall: {
    what: (params) => `${told(params, 'found', 'a value')} is below ${told(params, 'limit', 'the least')}`,
    remedy: EARLIER,
  },
  tooBig: {
    what: (params) => `${told(params, 'found', 'a value')} is above ${told(params, 'limit', 'the most')}`,
    remedy: EARLIER,
  },
  notAllowed: {
    what: (params) =>
      `${told(params, 'found', 'a value')} is none of ${told(params, 'expected', 'what may stand there')}`,
    remedy: RELOAD,
  },
  textTooLong: { what: (params) => `a text is longer than ${told(params, 'limit', 'it may be')}`, remedy: EARLIER },
  listTooLong: { what: (params) => `there are more than ${told(params, 'limit', 'a plan may hold')}`, remedy: EARLIER },
  listTooShort: { what: (params) => `there are fewer than ${told(params, 'limit', 'needed')}`, remedy: EARLIER },
  badId: { what: (params) => `${quoted(params, 'found')} is no id`, remedy: EARLIER },
  badGauge: { what: (params) => `${quoted(params, 'found')} is no size`, remedy: EARLIER },
  badTerminal: { what: (params) => `${quoted(params, 'found')} is no terminal`, remedy: EARLIER },
  brokenText: { what: () => 'a text holds half a character', remedy: EARLIER },
  duplicateId: { what: (params) => `${quoted(params, 'id')} stands for two things`, remedy: EARLIER },
  duplicateTerminal: { what: (params) => `terminal ${quoted(params, 'terminal')} is there twice`, remedy: EARLIER },
  duplicateFamily: {
    what: (params) => `the own family of links ${quoted(params, 'family')} is told twice`,
    remedy: EARLIER,
  },
  unknownSheet: { what: (params) => `sheet ${quoted(params, 'id')} is named and not there`, remedy: EARLIER },
  unknownFitting: { what: (params) => `fitting ${quoted(params, 'id')} is named and not there`, remedy: EARLIER },
  unknownTerminal: {
    what: (params) => `${quoted(params, 'fitting')} has no terminal ${quoted(params, 'terminal')}`,
    remedy: EARLIER,
  },
  unknownGauge: { what: (params) => `there is no size ${quoted(params, 'gauge')}`, remedy: EARLIER },
  unknownFamily: {
    what: (params) => `the own family of links ${quoted(params, 'family')} is named and not told`,
    remedy: EARLIER,
  },
  endOffSheet: {
    what: (params) => `the run ends at ${quoted(params, 'fitting')}, which is on another sheet`,
    remedy: EARLIER,
  },
  sameSheet: {
    what: () => 'a continuation point goes on on the sheet it is on',
    remedy: EARLIER,
  },
  selfJoin: { what: () => 'a run starts and ends at one terminal', remedy: EARLIER },
};

/** Where a file says what it is: that it is no plan, or of which version, is wrong with the whole of it. */
const OF_THE_WHOLE: ReadonlySet<string> = new Set(['format', 'version']);

const isKnown = (code: string): code is OpenCode | 'unreadable' => Object.hasOwn(REASONS, code);

/** 'Not opened: 'x' is missing, at fittings[3] (Rear amplifier). Open an earlier copy of the file.' */
export function refused(params: Params): string {
  const code = String(params.code ?? '');
  const reason = REASONS[isKnown(code) ? code : 'notAPlan'];
  const where = told(params, 'where', '');
  const name = told(params, 'name', '');
  const place = where === '' || OF_THE_WHOLE.has(where) ? '' : `, at ${where}${name === '' ? '' : ` (${name})`}`;
  return `Not opened: ${reason.what(params)}${place}. ${reason.remedy}`;
}

/** The same, in the page. */
export const openRefused = (params: Params): string => `${refused(params)} Your open plan is as it was.`;
