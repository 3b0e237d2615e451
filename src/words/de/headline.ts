import type { Assessment, NotTold, RuleId, Severity, UncheckedId } from '../../assess/answer.ts';
import { ruleSets } from './fittingChoices.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The verdict in one line: RULES, section 1. */
export function headline({ kind, count }: Assessment['headline'], ruleSet: Assessment['ruleSet']): string {
  switch (kind) {
    case 'stop':
      return `Stopp: ${counted(count, 'Befund', 'Befunde')}`;
    case 'fix':
      return `Vor dem Einbau beheben: ${counted(count, 'Befund', 'Befunde')}`;
    case 'provisional':
      return `Vorläufig: ${counted(count, 'Länge', 'Längen')} nachmessen`;
    case 'nothing':
      return `Kein Befund nach ${ruleSets[ruleSet]}`;
    case 'empty':
      return 'Noch nichts gezeichnet';
  }
}

export const nothingJoined = 'Noch nichts verbunden';
export const nothingFed = 'Noch nichts versorgt';

export const headlineEmptyHint =
  'Batterie und Endstufe setzen, dann eine Zuleitung vorschlagen lassen oder die Leitung dazwischen zeichnen.';

const NOT_TOLD: Readonly<Record<NotTold['kind'], (count: number) => string>> = {
  lengthsNotTaped: (count) => `${counted(count, 'Länge', 'Längen')} nicht nachgemessen`,
  surroundingsNotMarked: (count) => `Umgebung von ${counted(count, 'Leitung', 'Leitungen')} nicht angegeben`,
  batteryAssumed: (count) => (count === 1 ? 'Batteriedaten angenommen' : `Daten von ${count} Batterien angenommen`),
  cableUnmarked: (count) => `${counted(count, 'Leitung', 'Leitungen')} ohne Aufdruck`,
  loadUnknown: (count) => (count === 1 ? 'Last einer Endstufe unbekannt' : `Lasten von ${count} Endstufen unbekannt`),
};

export const notToldLabel = 'Nicht angegeben:';
export const notTold = (items: readonly NotTold[]): string =>
  items.map(({ kind, ids }) => NOT_TOLD[kind](ids.length)).join('; ');

export const unchecked: Readonly<Record<UncheckedId, string>> = {
  charging: 'was der Generator leistet (keiner gezeichnet)',
};

export const notCheckedLabel = 'Noch nicht geprüft:';
export const notChecked = (items: readonly { rule: UncheckedId }[]): string =>
  items.map(({ rule }) => unchecked[rule]).join('; ');

/** Both counts in one line, where there is no room for the lists. */
export const brief = (told: number, checked: number): string =>
  `${told === 0 ? 'Alles angegeben' : `${counted(told, 'Angabe fehlt', 'Angaben fehlen')}`}, ${
    checked === 0 ? 'alles geprüft' : `${checked} noch nicht geprüft`
  }`;

/** Severity as a word; the shape and the colour come after it. */
export const severities: Readonly<Record<Severity, string>> = { stop: 'Stopp', fix: 'Beheben', note: 'Hinweis' };
export const notesCount = (count: number): string => counted(count, 'Hinweis', 'Hinweise');
export const showAll = (count: number): string => `Alle ${count} zeigen`;
export const showFirst = (count: number): string => `Die ersten ${count} zeigen`;

/** What each rule is about, for the list of what was checked. */
export const rules: Readonly<Record<RuleId, string>> = {
  'unprotected-length': 'ungesicherte Länge',
  'no-device': 'eine Sicherung in jedem Weg unter Spannung',
  'fuse-over-conductor': 'Sicherung gegen Leitung',
  'step-down': 'dünnere Leitung hinter größerer Sicherung',
  'fuse-under-load': 'Sicherung gegen Strom',
  'fuse-over-maker': 'größte Sicherung laut Hersteller der Endstufe',
  'no-fuse-qualifies': 'eine Sicherung, die passt',
  'no-size-in-stock': 'eine Leitung, die ausreicht',
  'rating-not-held': 'Nennströme, die es gibt',
  'link-under-voltage': 'Sicherung gegen Bordspannung',
  'holder-too-hot': 'Temperatur am Sicherungshalter',
  'fuse-in-return': 'keine Sicherung in der Rückleitung',
  'drop-cables': 'Spannungsfall der Leitungen',
  'drop-whole': 'Spannungsfall des ganzen Weges',
  'below-cut-out': 'Spannung an der Endstufe',
  'cannot-carry': 'übertragbare Leistung',
  ampacity: 'Strombelastbarkeit',
  heating: 'Leitertemperatur',
  'ground-missing': 'Masseverbindungen',
  'ground-smaller': 'Masse gegen Zuleitung',
  'not-fed': 'jede Endstufe versorgt',
  'loose-end': 'lose Enden',
  'no-rating': 'Nennleistung',
  'ratings-differ': 'Leistung gegen Sicherungen am Gerät',
  'load-unknown': 'Lastimpedanz',
  'ask-external-fuse': 'äußere Sicherung der Endstufe',
  'unmarked-cable': 'Leitung ohne Aufdruck',
  'firewall-no-grommet': 'Durchführung an der Spritzwand',
  'pass-through-shared': 'eine Leitung je Durchführung',
  'cable-changes': 'eine Leitung von Ende zu Ende',
  'source-short': 'Quelle gegen Karosserie',
  'series-batteries': 'Batterien in Reihe',
  'positive-earth': 'Minus an Karosserie',
  'small-separate-run': 'dünne Einzelleitungen',
  'short-not-cleared': 'Kurzschluss gegen Karosserie',
  'short-uncertain': 'Zeitgrenzen der Sicherungen',
  'back-fed': 'Kurzschluss aus einer anderen Quelle gespeist',
  'breaking-capacity': 'Ausschaltvermögen',
  selectivity: 'Selektivität der Sicherungen',
  'overload-heating': 'Erwärmung bei Überlast',
  'charging-deficit': 'mittlerer Strom gegen Generator',
  'capacitor-precharge': 'Vorladen der Kondensatoren',
  'capacitor-unfused': 'Kondensatoren als Quellen',
  'joint-heat': 'Wärme der Verbindungsstellen',
  'contact-overloaded': 'Nennstrom von Relais, Schaltern und Schienen',
  'takeoff-overloaded': 'Werkssicherung am Abgriff',
  'switch-open': 'offene Schalter',
  'grommet-too-small': 'Tüllen gegen ihre Leitungen',
  'bend-too-tight': 'Biegungen mit angegebenem Radius',
  'cable-over-terminal': 'Leitungen gegen ihre Anschlüsse',
  'clad-as-copper': 'durchgehend Kupfer',
  'size-not-proven': 'Querschnitt gegen gezählte Drähte',
  'parallel-one-fuse': 'parallele Leitungen einzeln gesichert',
  'ground-on-sensor': 'Sensor am Minuspol',
  'strap-smaller': 'Masseband ab Werk gegen Zuleitung',
  'tape-doubtful': 'Längen, denen die Zeichnung widerspricht',
  'reducer-length': 'Länge von Reduzierungen',
  'supply-wiring': 'Leitung und Sicherung von Ladewandlern und Generatoren',
};
