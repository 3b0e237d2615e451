/** Labels of what opens on demand: dialogs, what is selected, the list. */
import type { LengthProblem } from '../length.ts';
import type { NumberProblem } from '../number.ts';

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

const proposedToo = (n: number): string => (n === 0 ? '' : `, ${n} vorgeschlagen`);

export const inspector = {
  label: 'Ausgewählt',
  nothing: 'Nichts ausgewählt',
  name: 'Name',
  /** The two lengths that say where something is. */
  axes: {
    vehicle: { x: 'Ab Front', y: 'Ab rechter Seite' },
    own: { x: 'Ab Front', y: 'Ab rechter Seite' },
    bench: { x: 'Ab linkem Ende', y: 'Ab hinterer Kante' },
    side: { x: 'Ab Front', y: 'Ab Dach' },
  },
  locked: 'Sperren',
  lockedHint: 'Ein Ärmel verschiebt nichts',
  remove: 'Löschen',
  zone: 'Umgebung',
  strap: 'Masseband ab Werk zur Karosserie',
  strapLength: 'Länge des Massebands',
  strapArea: 'Querschnitt des Massebands, mm²',
  rating: 'Nennstrom, A',
  /** A field of one part of a fitting: 'Pol: Nennstrom, A'. */
  ofPart: (part: string, label: string) => `${part}: ${label}`,
  family: 'Bauart',
  auto: 'Berechnet',
  fixedRating: 'Festgelegt auf',
  fixedRatingA: 'Festgelegt auf, A',
  outputs: 'Abgänge',
  output: (n: string) => `Abgang ${n}`,
  outputFused: (n: string) => `Abgang ${n} hat eine Sicherung`,
  addOutput: 'Abgang hinzufügen',
  removeOutput: (n: string) => `Abgang ${n} entfernen`,
  outputInUse: (n: string) => `An Abgang ${n} hängt eine Leitung. Erst die Leitung löschen, dann den Abgang.`,
  lastOutput: 'Ein Verteilerblock behält mindestens einen Abgang.',
  ratedW: 'Nennleistung an der angeschlossenen Last, W',
  loadOhm: 'Angeschlossene Last je Kanal, Ω',
  ampClass: 'Klasse',
  efficiency: 'Wirkungsgrad',
  regulated: 'Geregelte Versorgung',
  onboard: 'Sicherungen am Gerät, A',
  onboardHint: 'Jeder Nennstrom, mit Leerzeichen dazwischen: 30 30. Für keine: 0.',
  externalMax: 'Größte äußere Sicherung laut Hersteller, A',
  notTold: 'nicht angegeben',
  clear: 'Leeren',
  kind: 'Art',
  from: 'Von',
  to: 'Nach',
  taped: 'Nachgemessene Länge',
  tapeShared: (share: string, plusMinus: string) =>
    `${share} von einer längeren gemessenen Leitung, nach der Zeichnung geteilt: ± ${plusMinus}, bis dieses Stück selbst gemessen ist.`,
  tapeOutdated: (taped: string, drawn: string) =>
    `Nachgemessen ${taped}, bevor ein Ende oder ein Knick verschoben wurde; gezeichnet sind jetzt ${drawn}. Bis neu gemessen ist, zählt das Größere.`,
  tapeHolds: (taped: string) => `Es sind jetzt ${taped}`,
  tapedWins: (taped: string, drawn: string) => `Nachgemessen ${taped}: das zählt, nicht die gezeichneten ${drawn}.`,
  drawnCounts: (drawn: string, plusMinus: string) => `Gezeichnet ${drawn}, ± ${plusMinus} bis zum Nachmessen.`,
  tapeDoubt: (taped: string, meant: string) => `${taped}? Waren ${meant} gemeint?`,
  tapeMeant: (meant: string) => `${meant} übernehmen`,
  clearTape: 'Wieder die gezeichnete Länge nehmen',
  rise: 'Auf und ab',
  slack: 'Zugabe, %',
  sheathed: 'Auf der ganzen ungesicherten Länge im Schutzrohr',
  sheathedHint: 'Geschlossenes Rohr, Kanal oder Kasten. Geschlitzter Schlauch und Band zählen nicht.',
  nearer: 'Warum es näher nicht geht',
  loom: 'Mit anderen im Kabelbaum',
  carpet: 'Unter Teppich oder Dämmung',
  size: 'Querschnitt',
  sizeAuto: 'Berechnet',
  material: 'Metall',
  insulation: 'Isolierklasse, °C',
  bends: (n: number) => count(n, 'Knick', 'Knicke'),
  bend: (n: number, run: string) => `Knick ${n} in ${run}`,
  bendShort: (n: number) => `Knick ${n}`,
  addBend: 'Knick hinzufügen',
  removeBend: 'Diesen Knick entfernen',
  whole: 'Ganze Leitung',
  origin: (origin: string) => `(${origin})`,
} as const;

export const keypad = {
  open: 'Tastenfeld',
  label: (field: string) => `Tastenfeld: ${field}`,
  back: 'Letztes Zeichen löschen',
  clear: 'Leeren',
  done: 'Fertig',
  cancel: 'Abbrechen',
  space: 'Leerzeichen',
} as const;

export const list = {
  label: 'Der Plan als Liste',
  hint: 'Alles, was die Zeichnung kann, mit Eingabefeldern. Beide zeigen denselben Plan.',
  close: 'Liste schließen',
  fittings: (n: number, proposed = 0) => `${count(n, 'Bauteil', 'Bauteile')}${proposedToo(proposed)}`,
  runs: (n: number, proposed = 0) => `${count(n, 'Leitung', 'Leitungen')}${proposedToo(proposed)}`,
  add: 'Bauteil hinzufügen',
  kind: 'Art',
  name: 'Name',
  addDo: 'Hinzufügen',
  connect: 'Zwei Anschlüsse verbinden',
  from: 'Von Anschluss',
  to: 'Nach Anschluss',
  choose: 'wählen',
  bends: 'Knicke, vom ersten zum letzten',
  bendsHint: 'Ein Knick je Zeile, zwei Längen mit Semikolon: 1,2 m; 0,4 m',
  connectDo: 'Verbinden',
  split: 'Bauteil in eine Leitung setzen',
  splitRun: 'Leitung',
  splitHow: 'Wo',
  splitAlong: 'Nach einer Länge auf ihr',
  splitAt: 'An einer Stelle',
  along: 'Länge auf der Leitung',
  splitDo: 'Einsetzen',
  chooseBoth: 'Erst beide Anschlüsse wählen.',
  chooseRun: 'Erst eine Leitung wählen.',
  editShort: 'Bearbeiten',
  edit: (name: string) => `${name} bearbeiten`,
  added: (name: string) => `${name} hinzugefügt.`,
  connected: (name: string) => `${name} angeschlossen.`,
  splitDone: (name: string, run: string) => `${name} eingesetzt in: ${run}.`,
  moved: (name: string) => `${name} bewegt.`,
  removed: (name: string) => `${name} gelöscht.`,
  at: {
    vehicle: (x: string, y: string) => `${x} ab Front; ${y} ab rechter Seite`,
    own: (x: string, y: string) => `${x} ab Front; ${y} ab rechter Seite`,
    bench: (x: string, y: string) => `${x} ab linkem Ende; ${y} ab hinterer Kante`,
    side: (x: string, y: string) => `${x} ab Front; ${y} ab Dach`,
  },
  joins: (from: string, to: string) => `von ${from} nach ${to}`,
  beyondRun: (length: string) => `Die Leitung ist ${length} lang. Weniger eingeben.`,
} as const;

export const fittingGroups = {
  sources: 'Quellen und Laden',
  protection: 'Trennen und Schalten',
  joining: 'Verbinden',
  loads: 'Verbraucher',
} as const;

export const newPlanDialog = {
  title: 'Neuer Plan',
  vehicle: 'Fahrzeug',
  name: 'Name',
  drive: 'Lenkrad',
  left: 'Linkslenker',
  right: 'Rechtslenker',
  lengthM: 'Länge',
  widthM: 'Breite',
  heightM: 'Höhe',
  frontAxleM: 'Front bis Vorderachse',
  wheelbaseM: 'Radstand',
  bayM: 'Front bis Spritzwand',
  cabM: 'Spritzwand bis Ende Innenraum',
  sillM: 'Breite eines Schwellers',
  sizes: 'Maße',
  sizesHint: 'Mittlere Maße dieser Art: eintragen, was nachgemessen ist.',
  battery: 'Batterie',
  noBattery: 'Noch keine',
  batteryAt: { front: 'Im Motorraum', seat: 'Unter einem Sitz', rear: 'Im Heck' },
  amplifiers: 'Endstufen, nach Leistung',
  addAmplifier: (watts: number) => `${watts} W hinzufügen`,
  chosen: (watts: readonly number[]) => `${watts.length} zu setzen: ${watts.map((w) => `${w} W`).join('; ')}`,
  removeLast: 'Die letzte wegnehmen',
  create: 'Diesen Plan beginnen',
  cancel: 'Abbrechen',
  kept: 'Der offene Plan bleibt in diesem Browser gespeichert.',
  bayTooLong: 'Motorraum und Innenraum zusammen sind länger als das Fahrzeug. Eines kürzen.',
  axlesTooFar: 'Die Hinterachse stünde hinter dem Fahrzeug. Radstand kürzen oder Fahrzeug verlängern.',
} as const;

export const settings = {
  title: 'Einstellungen',
  ruleSet: 'Regelsatz für die ungesicherte Länge',
  lengths: 'Längen in',
  metres: 'Meter',
  feet: 'Fuß und Zoll',
  sizes: 'Querschnitte',
  sae: 'SAE-Größen',
  awg: 'AWG',
  mm2: 'mm²',
  stock: 'Größen im Bestand',
  stockLast: 'Mindestens eine Größe im Bestand lassen.',
  families: 'Sicherungen im Bestand',
  familiesLast: 'Mindestens eine Bauart im Bestand lassen.',
  engine: 'Motor läuft immer',
  engineHint: 'Dann bemisst allein die Ladespannung die Leitungen.',
  electrical: 'Elektrik',
  temperatures: 'Temperaturen, °C',
  inputs: {
    restV: 'Ruhespannung, V',
    chargingV: 'Ladespannung, V',
    duty: 'Aussteuerung der Musik, 0,01 bis 1',
    dropLimit: 'Grenze des Spannungsfalls, Anteil der Bordspannung',
    cutOutV: 'Abschaltspannung der Endstufen, V',
    bodyOhm: 'Widerstand der Karosserie, Ω',
    jointOhm: 'Widerstand einer Verbindungsstelle, Ω',
    linkDropV: 'Spannungsfall eines Sicherungseinsatzes bei Nennstrom, V',
    usableShare: 'Nutzbarer Anteil der Kapazität, 0,05 bis 1',
    peukert: 'Peukert-Exponent, 1 bis 1,6',
    bayC: 'Motorraum',
    wingC: 'Entlang Kotflügel',
    hotC: 'Neben heißen Teilen',
    cabinC: 'Innenraum',
    cargoC: 'Laderaum',
    underC: 'Unter dem Boden',
  },
} as const;

export const legend = {
  title: 'Legende',
  runs: 'Leitungen',
  power: 'Plus: rot, durchgezogen',
  ground: 'Masse: fast schwarz, lange Striche',
  remote: 'Schaltleitung: blau, kurze Striche',
  factory: 'Leitung ab Werk: grau, lange und kurze Striche',
  thickness: 'Je dicker die Linie, desto mehr Kupfer.',
  hazard: 'Schwarz auf Gelb: Leitung unter Spannung, die keine Sicherung schützt',
  findings: 'Befunde',
  stop: 'Stopp: kann brennen oder bricht eine Regel gegen Brand',
  fix: 'Beheben: gegen die Regeln, oder die Anlage funktioniert so nicht',
  note: 'Hinweis: gut zu wissen; der Plan darf gebaut werden',
  fittings: 'Bauteile',
} as const;

export const openDialog = {
  title: 'Pläne',
  file: 'Datei öffnen',
  kept: 'In diesem Browser gespeichert',
  none: 'Noch kein Plan in diesem Browser gespeichert: das Beispiel wird es mit seiner ersten Änderung.',
  isOpen: 'jetzt offen',
  duplicate: 'Duplizieren',
  copyOf: (name: string) => `${name}, Kopie`,
  rename: 'Umbenennen',
  newName: 'Neuer Name',
  nameDone: 'Fertig',
  remove: 'Löschen',
  deleted: (name: string) => `${name} gelöscht.`,
  unreadable: 'beschädigter Plan',
  saved: (time: string) => `gespeichert: ${time}`,
} as const;

export const fields = {
  /** What is wrong with a length, and what to do. */
  lengthProblem(problem: LengthProblem, field: string, min: string, max: string): string {
    switch (problem) {
      case 'empty':
        return `${field}: eine Länge eingeben, etwa 1,5 m oder 5 ft 3 1/2 in.`;
      case 'unreadable':
        return `${field}: das ist keine Länge. So schreiben: 1,5 m, 160 cm oder 5 ft 3 1/2 in.`;
      case 'negative':
        return `${field}: eine Länge ist nicht kleiner als null. Das Minus weglassen.`;
      case 'twoDecimalSigns':
        return `${field}: zwei Dezimalzeichen. Eines stehen lassen.`;
      case 'tooShort':
        return `${field}: mindestens ${min}.`;
      case 'tooLong':
        return `${field}: höchstens ${max}. Die Einheit prüfen.`;
    }
  },
  numberProblem(problem: NumberProblem, field: string, min: string, max: string, unit: string): string {
    switch (problem) {
      case 'empty':
        return `${field}: eine Zahl eingeben.`;
      case 'unreadable':
        return `${field}: das ist keine Zahl. So schreiben: 12,6 oder 12.6.`;
      case 'otherUnit':
        return `${field}: das ist eine andere Einheit. Den Wert in ${unit} angeben.`;
      case 'tooSmall':
        return `${field}: mindestens ${min}.`;
      case 'tooLarge':
        return `${field}: höchstens ${max}.`;
    }
  },
  inDoubt: (field: string, typed: string, first: string, second: string) =>
    `${field}: ist mit „${typed}“ ${first} oder ${second} gemeint? Auf eine dieser beiden Arten schreiben.`,
  pairProblem: (line: number) => `Knick ${line}: zwei Längen mit Semikolon dazwischen schreiben: 1,2 m; 0,4 m.`,
  kept: 'Der Wert von vorher bleibt.',
  noneKept: 'Bis dahin bleibt das Feld ohne Wert.',
} as const;
