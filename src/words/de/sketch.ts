/** What is written on and over the sketch. */
/** What the panes show; each title is also the button that changes it. */
export const panes = {
  whole: { vehicle: 'Ganzes Fahrzeug', own: 'Eigener Umriss', bench: 'Ganzes Brett' },
  bay: 'Motorraum',
  source: 'Um die Batterie',
  enlarge: (pane: string) => `${pane}: allein zeigen`,
  both: (pane: string) => `${pane}: beide Ansichten zeigen`,
  swap: (pane: string, other: string) => `${pane}: dafür zeigen: ${other}`,
} as const;

/** What a sheet without a name of its own is called: the part it shows, and from where. */
export const sheetNames = {
  whole: { above: 'Ganz von oben', side: 'Ganz von der Seite' },
  bay: { above: 'Motorraum von oben', side: 'Motorraum von der Seite' },
  cargo: { above: 'Laderaum von oben', side: 'Laderaum von der Seite' },
} as const;

export const drawing = {
  continue: 'Auf anderem Blatt fortsetzen',
  continueOn: (sheet: string) => `Fortsetzen auf: ${sheet}`,
  back: 'Zurück',
  cancel: 'Abbrechen',
  terminalsOf: (fitting: string) => `Anschlüsse von ${fitting}`,
  taken: 'belegt',
  done: 'Fertig',
  moveHint: 'Tippen wählt aus, Ziehen bewegt.',
  placeHint: (fitting: string) => `${fitting}: Stelle antippen.`,
  startHint: 'Antippen, wo die Leitung beginnt.',
  goOnHint: 'Tippen setzt einen Knick, ein Anschluss beendet.',
  endHint: 'Auf einem Anschluss loslassen, um dort anzuschließen.',
  pickHint: 'Den Anschluss antippen.',
  isLocked: 'Gesperrt: bleibt, wo es ist',
  removeBend: 'Knick entfernen',
  aimHint: 'Loslassen setzt. Vom Blatt schieben bricht ab.',
  splits: (run: string) => `Kommt in: ${run}`,
} as const;

/** Figures beside the finger and beside what they measure. */
export const live = {
  length: 'Länge',
  unprotected: 'Ungesichert',
  drop: 'Max. Spannungsfall',
  none: 'keine',
  fromSide: 'Ab rechter Seite',
  taped: (length: string) => `${length} nachgemessen`,
  continuesAt: (sheet: string) => `weiter auf: ${sheet}`,
  locked: 'gesperrt',
  separator: ' · ',
} as const;

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** For a screen reader: what the picture shows, not how to use it. */
export function describePane(
  pane: string,
  /** unprotected: null where there is none, undefined where it is not to be told */
  counts: { fittings: number; runs: number; unprotected: string | null | undefined },
): string {
  const striped =
    counts.unprotected === null
      ? ' Keine ungesicherte Strecke.'
      : ` Längste ungesicherte Strecke: ${counts.unprotected}.`;
  const told = counts.unprotected === undefined ? '' : striped;
  const holds = `${count(counts.fittings, 'Bauteil', 'Bauteile')} und ${count(counts.runs, 'Leitung', 'Leitungen')}`;
  return `${pane}: Zeichnung, ${holds}.${told} Die Liste enthält denselben Plan.`;
}

const SIGNS: Readonly<Record<string, string>> = { positive: '+', stud: '+', negative: '−' };

/** What a terminal is called on its tab: the sign of a post says more than the word alone. */
export function tab(terminal: string, name: string): string {
  const sign = SIGNS[terminal];
  return sign === undefined ? name : `${sign} ${name}`;
}
