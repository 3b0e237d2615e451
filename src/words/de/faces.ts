/** The view of this device, and what the faces for a customer and a class say. */
import type { Zone } from '../../plan/schema.ts';

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const view = {
  title: 'Ansicht',
  face: 'Wer auf den Bildschirm sieht',
  faces: { work: 'Arbeit', customer: 'Kundschaft', class: 'Unterricht' },
  faceHints: {
    work: 'Alle Werte, Befunde und Werkzeuge.',
    customer: 'Was die Anlage ist, was das Auto schützt, was noch zu klären ist.',
    class: 'Größere Schrift; Werte lassen sich verbergen.',
  },
  theme: 'Licht ringsum',
  themes: { paper: 'Papier', sun: 'Sonne', dark: 'Dunkel' },
  themeHints: {
    paper: 'Ruhig, für drinnen.',
    sun: 'Fast schwarz auf weiß, gegen Blendung.',
    dark: 'Für den Abend.',
  },
  side: 'Hand, die zeichnet',
  sides: { right: 'Rechts', left: 'Links' },
  sideHints: {
    right: 'Werkzeuge links, wo die andere Hand das Tablet hält.',
    left: 'Werkzeuge rechts, wo die andere Hand das Tablet hält.',
  },
  language: 'Sprache',
  languageAuto: 'Wie der Browser vorgibt',
  touch: 'Bedienung',
  bigFingers: 'Große Finger',
} as const;

export const faceBar = {
  now: { customer: 'Ansicht für Kundschaft', class: 'Ansicht für Unterricht' },
  leave: 'Zurück zur Arbeit',
  hide: 'Werte verbergen',
  show: 'Werte zeigen',
} as const;

export const classFace = {
  hidden: 'Werte sind verborgen',
  hiddenHint: 'Was ist zu erwarten? Die Werte zeigen, wenn die Klasse geantwortet hat.',
  hiddenValue: 'verborgen',
} as const;

const PLACES: Readonly<Record<Zone, string | null>> = {
  auto: null,
  bay: 'im Motorraum',
  wing: 'entlang Kotflügel',
  hot: 'neben heißen Teilen',
  cabin: 'im Innenraum',
  cargo: 'im Laderaum',
  under: 'unter dem Boden',
};

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** 'A', 'A und B', 'A, B und C'. */
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} und ${names.at(-1)}`;

export const customer = {
  notFinished: (points: number) => `Nicht fertig: vor dem Einbau ${plural(points, 'Punkt', 'Punkte')} zu klären`,
  toMeasure: (lengths: number) => `Nicht fertig: ${plural(lengths, 'Länge', 'Längen')} am Fahrzeug zu messen`,
  system: 'Die Anlage',
  noAmplifier: 'Noch keine Endstufe gewählt.',
  outputOpen: 'Leistung noch offen',
  total: (power: string) => `${power} insgesamt`,
  change: (name: string) => `${name} ändern`,
  changeClose: 'Fertig',
  protects: 'Was das Auto schützt',
  noFuse: 'Noch keine Sicherung gezeichnet.',
  ratingOpen: 'Nennstrom noch offen',
  /** Where a fuse sits: 'Im Motorraum, nach 40 cm Leitung ab Batterie.' */
  sits(zone: Zone | null, from: { length: string; source: string } | null): string {
    const place = zone === null ? null : PLACES[zone];
    const way = from === null ? null : `nach ${from.length} Leitung ab ${from.source}`;
    const parts = [place, way].filter((part) => part !== null);
    return parts.length === 0 ? '' : `${capitalised(parts.join(', '))}.`;
  },
  covers: (from: string, to: readonly string[]) =>
    `Berührt die Leitung von ${from} nach ${listed(to)} je blankes Metall, schaltet diese Sicherung den Strom ab, bevor die Leitung Schaden nimmt.`,
  coversShared: (from: string, to: readonly string[], ahead: string) =>
    `Sie wacht zusammen mit ${ahead} über die Leitung von ${from} nach ${listed(to)}: eine von beiden schaltet den Strom ab, bevor die Leitung Schaden nimmt. Dass diese zuerst öffnet, belegen die Grenzwerte der Sicherungsnorm nicht.`,
  coversUnshown: (from: string, to: readonly string[]) =>
    `Sie wacht über die Leitung von ${from} nach ${listed(to)}. Dass sie in jedem Fall öffnet, bevor diese Leitung Schaden nimmt, belegen die Grenzwerte der Sicherungsnorm nicht.`,
  coversOpen: 'Welche Leitung sie schützt, ist noch zu klären.',
  before: (length: string) => `Die ${length} davor haben keine eigene Sicherung.`,
  bare: (source: string, length: string) => `${length} Leitung ab ${source} haben noch keine Sicherung.`,
  feed: 'Leitung ab Batterie',
  feedOpen: 'Noch zu wählen.',
  carries: (current: string) => `Bis ${current} bei voller Lautstärke.`,
  open: 'Noch zu klären',
  topics: {
    protection: (n: number) => `${plural(n, 'Punkt', 'Punkte')} zu Sicherungen und was sie schützen`,
    cable: (n: number) => `${plural(n, 'Punkt', 'Punkte')} zu den Leitungen`,
    power: (n: number) => `${plural(n, 'Punkt', 'Punkte')} zum Strom für die Endstufen`,
    ground: (n: number) => `${plural(n, 'Punkt', 'Punkte')} zum Rückweg über die Karosserie`,
    detail: (n: number) => plural(n, 'weiterer Punkt', 'weitere Punkte'),
  },
  notTold: (items: string) => `Noch nicht angegeben: ${items}.`,
  notChecked: (items: string) => `Noch nicht geprüft: ${items}.`,
} as const;
