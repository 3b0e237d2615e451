/** Labels of the page: short, in the trade's words. */

export const app = {
  title: 'Feedrun',
  pageTitle: (plan: string) => `${plan} - Feedrun`,
  dropHere: 'Plandatei hier ablegen, um sie zu öffnen',
  sketch: 'Zeichnung',
} as const;

export const topbar = {
  label: 'Plan',
  planName: 'Name des Plans',
  views: 'Aktueller Bereich',
  newPlan: 'Neuer Plan',
  open: 'Pläne',
  save: 'Datei speichern',
  list: 'Liste',
  alternatives: 'Varianten',
  settings: 'Einstellungen',
  legend: 'Legende',
  view: 'Ansicht',
  workView: 'Arbeitsansicht',
  menu: 'Menü',
  close: 'Schließen',
  example: 'Beispiel',
} as const;

export const shelf = {
  label: 'Werkzeuge',
  hand: 'Die Hand',
  move: 'Bewegen',
  run: 'Leitung',
  place: 'Setzen',
  fittings: 'Bauteile',
  more: 'Mehr',
  moreFittings: 'Mehr Bauteile',
  moreHeld: (kind: string) => `Mehr Bauteile, in der Hand: ${kind}`,
  snap: 'Raster',
  fit: 'Einpassen',
  tools: 'Werkzeuge',
  closeTools: 'Werkzeuge schließen',
  inHand: (what: string) => `, in der Hand: ${what}`,
} as const;

export const refusals = {
  sameFitting: 'Beide Anschlüsse gehören zu einem Bauteil. Einen Anschluss eines anderen wählen.',
  alreadyJoined: 'Diese Anschlüsse sind schon verbunden. Einen anderen wählen oder jene Leitung bearbeiten.',
  gone: 'Diesen Anschluss gibt es nicht mehr. Einen anderen wählen.',
  tooManyBends: 'Eine Leitung hat höchstens 500 Knicke. Einige weglassen.',
  planFull: 'Mehr Leitungen fasst der Plan nicht. Erst eine löschen.',
  refused: 'Der Plan kann diese Leitung nicht aufnehmen. Andere Anschlüsse oder Knicke wählen.',
} as const;

export const saveStates = {
  idle: '',
  saving: 'Wird gespeichert...',
  saved: 'In diesem Browser gespeichert',
  savedShort: 'Gespeichert',
  failed: 'Nicht gespeichert: Datei speichern',
  example: 'Beispiel: die erste Änderung macht eine eigene Kopie daraus',
} as const;

export const newPlan = { untitled: 'Plan ohne Namen' } as const;
