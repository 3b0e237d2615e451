/** What an act is called, as a command and after 'Rückgängig:'; {} stands for the name of what it is done to. */
const ACTS: Readonly<Record<string, string>> = {
  place: '{} setzen',
  dropOnRun: '{} in die Leitung setzen',
  connect: '{} anschließen',
  reconnect: '{} umklemmen',
  move: '{} bewegen',
  moveFitting: '{} bewegen',
  nudge: '{} bewegen',
  addBend: 'Knick einfügen in {}',
  moveBend: 'Knick bewegen in {}',
  removeBend: 'Knick entfernen in {}',
  remove: '{} löschen',
  rename: 'Plan umbenennen',
  lock: '{} sperren',
  unlock: '{} entsperren',
  change: '{} ändern',
  input: 'Annahme ändern bei {}',
  addOutput: 'Abgang hinzufügen bei {}',
  removeOutput: 'Abgang entfernen bei {}',
  settings: 'Einstellungen ändern',
  propose: 'Zuleitung vorschlagen',
  accept: '{} annehmen',
  acceptAll: 'vorgeschlagene Zuleitung annehmen',
  refuse: '{} ablehnen',
  refuseAll: 'vorgeschlagene Zuleitung ablehnen',
  mirror: 'Lenkradseite tauschen',
  addSheet: 'Blatt hinzufügen',
  removeSheet: 'Blatt löschen',
  renameSheet: 'Blatt umbenennen',
  continue: '{} auf anderem Blatt fortsetzen',
  outlineOfAll: 'Umriss auf allen Blättern des Fahrzeugs ändern',
  outline: 'Umriss ändern',
  alternative: 'Variante annehmen',
};

/** 'Hauptsicherung bewegen'. An act without words is said as it is. */
export function act(id: string | null, what: string | null): string {
  const form = ACTS[id ?? ''] ?? `${id ?? ''}: {}`;
  return what === null ? form.replace(/( in| bei|:)? ?\{\} ?/, '') : form.replace('{}', () => what);
}

const steps = (depth: number): string => `${depth} ${depth === 1 ? 'Schritt' : 'Schritte'}`;

/** On a narrow tile they break where a soft hyphen (U+00AD) lets them. */
const UNDO = 'Rück\u00ADgängig';
const REDO = 'Wieder\u00ADholen';

export const history = {
  undo: UNDO,
  redo: REDO,
  undoLabel: (what: string, depth: number) =>
    depth === 0 ? `${UNDO}: nichts zurückzunehmen` : `${UNDO}: ${what}, ${steps(depth)}`,
  redoLabel: (what: string, depth: number) =>
    depth === 0 ? `${REDO}: nichts zurückzuholen` : `${REDO}: ${what}, ${steps(depth)}`,
} as const;
