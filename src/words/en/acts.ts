/** What an act is called, as a command and after 'Undo:'; {} stands for the name of what it is done to. */
const ACTS: Readonly<Record<string, string>> = {
  place: 'place {}',
  dropOnRun: 'put {} into the run',
  connect: 'connect {}',
  reconnect: 'reconnect {}',
  move: 'move {}',
  moveFitting: 'move {}',
  nudge: 'move {}',
  addBend: 'add a bend to {}',
  moveBend: 'move a bend of {}',
  removeBend: 'remove a bend of {}',
  remove: 'delete {}',
  rename: 'rename the plan',
  lock: 'lock {}',
  unlock: 'unlock {}',
  change: 'change {}',
  input: 'change an assumption of {}',
  addOutput: 'add an output to {}',
  removeOutput: 'remove an output of {}',
  settings: 'change the settings',
  propose: 'propose a feed',
  accept: 'accept {}',
  acceptAll: 'accept the proposed feed',
  refuse: 'refuse the proposed {}',
  refuseAll: 'refuse the proposed feed',
  mirror: 'swap the drive side',
  addSheet: 'add a sheet',
  removeSheet: 'delete the sheet',
  renameSheet: 'rename the sheet',
  continue: 'continue {} on another sheet',
  outline: 'change the outline',
  outlineOfAll: 'change the outline on every sheet of the vehicle',
  alternative: 'accept an alternative',
};

/** 'move Main fuse'. An act without words is said as it is. */
export function act(id: string | null, what: string | null): string {
  const form = ACTS[id ?? ''] ?? `${id ?? ''} {}`;
  return what === null ? form.replace(/( of| to)? \{\}/, '') : form.replace('{}', () => what);
}

const steps = (depth: number): string => `${depth} ${depth === 1 ? 'step' : 'steps'}`;

export const history = {
  undo: 'Undo',
  redo: 'Redo',
  undoLabel: (what: string, depth: number) =>
    depth === 0 ? 'Undo: nothing to take back' : `Undo: ${what}, ${steps(depth)}`,
  redoLabel: (what: string, depth: number) =>
    depth === 0 ? 'Redo: nothing to bring back' : `Redo: ${what}, ${steps(depth)}`,
} as const;
