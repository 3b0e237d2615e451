/** Why a file was not opened: what, where, and what to do, in one line. */
import type { OpenCode } from '../../plan/openReason.ts';

type Params = Readonly<Record<string, string | number>>;

interface OpenWords {
  what(params: Params): string;
  remedy: string;
}

const EARLIER = 'Eine frühere Kopie der Datei öffnen.';
const CHOOSE = 'Einen Plan wählen, der von dieser Seite stammt.';
const RELOAD = 'Diese Seite neu laden, um ihre neueste Fassung zu holen, dann die Datei noch einmal öffnen.';

const told = (params: Params, name: string, otherwise: string): string => {
  const value = params[name];
  return value === undefined || value === '' ? otherwise : String(value);
};
const quoted = (params: Params, name: string): string => `„${told(params, name, '?')}“`;

const REASONS: Readonly<Record<OpenCode | 'unreadable', OpenWords>> = {
  unreadable: {
    what: () => 'der Browser kann die Datei nicht lesen',
    remedy: 'Auf dieses Gerät kopieren, dann noch einmal öffnen.',
  },
  empty: { what: () => 'die Datei ist leer', remedy: EARLIER },
  tooLarge: { what: () => 'die Datei ist größer als jeder Plan', remedy: CHOOSE },
  truncated: {
    what: () => 'die Datei bricht mittendrin ab',
    remedy: 'Noch einmal kopieren oder herunterladen, oder eine frühere Kopie öffnen.',
  },
  notJson: {
    what: (params) => {
      const line = told(params, 'line', '');
      return `das ist nicht der Text eines Plans${line === '' ? '' : ` (Zeile ${line}, Zeichen ${told(params, 'column', '?')})`}`;
    },
    remedy: EARLIER,
  },
  tooDeep: { what: () => 'tiefer verschachtelt als jeder Plan', remedy: CHOOSE },
  tooMany: { what: () => 'mehr Inhalt, als ein Plan haben darf', remedy: CHOOSE },
  duplicateKey: { what: (params) => `${quoted(params, 'key')} ist zweimal angegeben`, remedy: EARLIER },
  notAPlan: { what: () => 'das ist kein Plan dieser Seite', remedy: CHOOSE },
  noVersion: { what: () => 'die Angabe der Version fehlt', remedy: EARLIER },
  newerVersion: {
    what: (params) =>
      `die Datei hat Version ${told(params, 'found', '?')}, diese Seite kennt ${told(params, 'known', '?')}`,
    remedy: RELOAD,
  },
  olderVersion: { what: (params) => `Version ${told(params, 'found', '?')} ist nicht mehr lesbar`, remedy: EARLIER },
  migrationFailed: {
    what: (params) => `Version ${told(params, 'found', '?')} ließ sich nicht auf den neuen Stand bringen`,
    remedy: EARLIER,
  },
  missingKey: { what: (params) => `${quoted(params, 'key')} fehlt`, remedy: EARLIER },
  unknownKey: { what: (params) => `${quoted(params, 'key')} gehört in keinen Plan`, remedy: RELOAD },
  wrongType: {
    what: (params) =>
      `dort steht ${told(params, 'found', 'etwas anderes')} statt ${told(params, 'expected', 'einer anderen Art von Wert')}`,
    remedy: EARLIER,
  },
  notFinite: { what: (params) => `${told(params, 'found', 'ein Wert')} ist keine Zahl`, remedy: EARLIER },
  tooSmall: {
    what: (params) => `${told(params, 'found', 'ein Wert')} liegt unter ${told(params, 'limit', 'dem Mindesten')}`,
    remedy: EARLIER,
  },
  tooBig: {
    what: (params) => `${told(params, 'found', 'ein Wert')} liegt über ${told(params, 'limit', 'dem Höchsten')}`,
    remedy: EARLIER,
  },
  notAllowed: {
    what: (params) =>
      `${told(params, 'found', 'ein Wert')} ist nichts von: ${told(params, 'expected', 'was dort stehen darf')}`,
    remedy: RELOAD,
  },
  textTooLong: { what: (params) => `ein Text ist länger als ${told(params, 'limit', 'erlaubt')}`, remedy: EARLIER },
  listTooLong: { what: (params) => `es sind mehr als ${told(params, 'limit', 'ein Plan fasst')}`, remedy: EARLIER },
  listTooShort: { what: (params) => `es sind weniger als ${told(params, 'limit', 'nötig')}`, remedy: EARLIER },
  badId: { what: (params) => `${quoted(params, 'found')} ist keine Kennung`, remedy: EARLIER },
  badGauge: { what: (params) => `${quoted(params, 'found')} ist kein Querschnitt`, remedy: EARLIER },
  badTerminal: { what: (params) => `${quoted(params, 'found')} ist kein Anschluss`, remedy: EARLIER },
  brokenText: { what: () => 'ein Text enthält ein halbes Zeichen', remedy: EARLIER },
  duplicateId: { what: (params) => `${quoted(params, 'id')} steht für zwei Dinge`, remedy: EARLIER },
  duplicateTerminal: { what: (params) => `Anschluss ${quoted(params, 'terminal')} ist zweimal da`, remedy: EARLIER },
  duplicateFamily: {
    what: (params) => `die eigene Bauart ${quoted(params, 'family')} ist zweimal angegeben`,
    remedy: EARLIER,
  },
  unknownSheet: { what: (params) => `Blatt ${quoted(params, 'id')} ist genannt und fehlt`, remedy: EARLIER },
  unknownFitting: { what: (params) => `Bauteil ${quoted(params, 'id')} ist genannt und fehlt`, remedy: EARLIER },
  unknownTerminal: {
    what: (params) => `${quoted(params, 'fitting')} hat keinen Anschluss ${quoted(params, 'terminal')}`,
    remedy: EARLIER,
  },
  unknownGauge: { what: (params) => `einen Querschnitt ${quoted(params, 'gauge')} gibt es nicht`, remedy: EARLIER },
  unknownFamily: {
    what: (params) => `die eigene Bauart ${quoted(params, 'family')} ist genannt und nicht angegeben`,
    remedy: EARLIER,
  },
  endOffSheet: {
    what: (params) => `die Leitung endet bei ${quoted(params, 'fitting')} auf einem anderen Blatt`,
    remedy: EARLIER,
  },
  sameSheet: {
    what: () => 'ein Fortsetzungspunkt führt auf sein eigenes Blatt',
    remedy: EARLIER,
  },
  selfJoin: { what: () => 'eine Leitung beginnt und endet am selben Anschluss', remedy: EARLIER },
};

/** Where a file says what it is: that it is no plan, or of which version, is wrong with the whole of it. */
const OF_THE_WHOLE: ReadonlySet<string> = new Set(['format', 'version']);

const isKnown = (code: string): code is OpenCode | 'unreadable' => Object.hasOwn(REASONS, code);

/** 'Nicht geöffnet: „x“ fehlt, bei fittings[3] (Endstufe hinten). Eine frühere Kopie der Datei öffnen.' */
export function refused(params: Params): string {
  const code = String(params.code ?? '');
  const reason = REASONS[isKnown(code) ? code : 'notAPlan'];
  const where = told(params, 'where', '');
  const name = told(params, 'name', '');
  const place = where === '' || OF_THE_WHOLE.has(where) ? '' : `, bei ${where}${name === '' ? '' : ` (${name})`}`;
  return `Nicht geöffnet: ${reason.what(params)}${place}. ${reason.remedy}`;
}

/** The same, in the page. */
export const openRefused = (params: Params): string => `${refused(params)} Der offene Plan ist unverändert.`;
