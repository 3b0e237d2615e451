import { history } from './acts.ts';

/** Sheets of one vehicle, points where cables go on from one to another, and outlines drawn by the user. */
export const sheets = {
  label: 'Blätter',
  add: '+ Blatt',
  addTitle: 'Blatt hinzufügen',
  edit: (name: string) => `${name} ändern`,
  editShort: 'Ändern',
  name: 'Name des Blatts',
  drawOutline: 'Umriss zeichnen',
  remove: 'Blatt löschen',
  removeRefused: 'Etwas darauf oder eine Leitung dorthin ist gesperrt. Erst entsperren.',
  done: 'Fertig',
} as const;

export const continuation = {
  goTo: (sheet: string) => `Zu ${sheet}`,
  on: (sheet: string) => `Auf ${sheet}`,
  hint: 'Ein Punkt einer Leitung, auf zwei Blättern gezeichnet. Er trennt nichts.',
} as const;

export const outlineEditor = {
  title: 'Eigener Umriss',
  picture: 'Der Umriss von oben, Front links',
  hint: 'Ecke oder Linie ziehen. Tippen auf die Kante setzt eine neue Ecke.',
  lengthM: 'Länge',
  widthM: 'Breite',
  heightM: 'Höhe',
  firewall: 'Spritzwand, ab Front',
  cargo: 'Beginn Laderaum, ab Front',
  none: 'Leer: gibt es nicht',
  corner: (number: number, of: number) => `Ecke ${number} von ${of}`,
  previous: 'Vorige Ecke',
  next: 'Nächste Ecke',
  addCorner: 'Ecke dahinter einfügen',
  removeCorner: 'Diese Ecke entfernen',
  x: 'Ecke, ab Front',
  y: 'Ecke, ab rechter Seite',
  rectangle: 'Rechteck',
  // what stands on the buttons is part of what they are called
  undo: `${history.undo} im Umriss`,
  redo: `${history.redo} im Umriss`,
  faults: {
    crosses: 'Die Kante kreuzt oder berührt sich selbst. Eine Ecke bewegen oder rückgängig machen.',
    bayTooLong: 'Spritzwand und Laderaumlinie liegen hinter dem Heck. Nach vorn setzen oder den Umriss verlängern.',
  },
  refused: 'Der Umriss passt nicht in seine Grenzen und wurde nicht übernommen.',
  use: 'Für dieses Blatt nehmen',
  onAllSheets: (sheets: number) => `Für alle ${sheets} Blätter dieses Fahrzeugs nehmen`,
  cancel: 'Abbrechen',
  templateName: 'Name der Vorlage',
  keep: 'Als Vorlage speichern',
  kept: (name: string) => `${name} ist als Vorlage gespeichert.`,
  notKept: 'Dieser Browser speichert keine Vorlagen.',
} as const;

export const templates = {
  title: 'Eigene Vorlagen',
  remove: (name: string) => `Vorlage ${name} löschen`,
  removeShort: 'Löschen',
} as const;
