/** What is written on and over the sketch. */
/** What the panes show; each title is also the button that changes it. */
export const panes = {
  whole: { vehicle: 'Whole vehicle', own: 'Own outline', bench: 'Whole board' },
  bay: 'Engine bay',
  /** In place of the bay, where the battery is elsewhere. */
  source: 'Around the battery',
  enlarge: (pane: string) => `${pane}: show it alone`,
  both: (pane: string) => `${pane}: show both views`,
  swap: (pane: string, other: string) => `${pane}: show ${other.toLowerCase()} instead`,
} as const;

/** What a sheet without a name of its own is called: the part it shows, and from where. */
export const sheetNames = {
  whole: { above: 'Whole from above', side: 'Whole from the side' },
  bay: { above: 'Bay from above', side: 'Bay from the side' },
  cargo: { above: 'Cargo from above', side: 'Cargo from the side' },
} as const;

export const drawing = {
  continue: 'Continue on another sheet',
  continueOn: (sheet: string) => `Continue on ${sheet}`,
  back: 'Back',
  cancel: 'Cancel',
  terminalsOf: (fitting: string) => `Terminals of ${fitting}`,
  taken: 'in use',
  done: 'Done',
  moveHint: 'Tap to select, drag to move.',
  placeHint: (fitting: string) => `${fitting}: tap where it goes.`,
  startHint: 'Tap where the run starts.',
  goOnHint: 'Tap for a bend, tap a terminal to end.',
  endHint: 'Let go on a terminal to join it there.',
  pickHint: 'Tap the terminal to join.',
  isLocked: 'Locked: it stays where it is',
  removeBend: 'Remove bend',
  aimHint: 'Let go to place. Slide off the sheet to cancel.',
  splits: (run: string) => `Goes into ${run}`,
} as const;

/** Figures beside the finger and beside what they measure. */
export const live = {
  length: 'Length',
  unprotected: 'Unprotected',
  drop: 'Worst drop',
  none: 'none',
  fromSide: 'From the right side',
  taped: (length: string) => `${length} taped`,
  continuesAt: (sheet: string) => `continues at ${sheet}`,
  locked: 'locked',
  separator: ' · ',
} as const;

/** For a screen reader: what the picture shows, not how to use it. */
export function describePane(
  pane: string,
  /** unprotected: null where there is none, undefined where it is not to be told */
  counts: { fittings: number; runs: number; unprotected: string | null | undefined },
): string {
  const striped =
    counts.unprotected === null ? ' No unprotected stretch.' : ` Longest unprotected stretch ${counts.unprotected}.`;
  const told = counts.unprotected === undefined ? '' : striped;
  return `${pane}: drawing of ${counts.fittings} fittings and ${counts.runs} runs.${told} The list holds the same plan.`;
}

const SIGNS: Readonly<Record<string, string>> = { positive: '+', stud: '+', negative: '−' };

/** What a terminal is called on its tab: the sign of a post says more than the word alone. */
export function tab(terminal: string, name: string): string {
  const sign = SIGNS[terminal];
  return sign === undefined ? name : `${sign} ${name}`;
}
