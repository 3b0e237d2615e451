/** Labels of the page: short, in the trade's words. */

export const app = {
  title: 'Feedrun',
  pageTitle: (plan: string) => `${plan} - Feedrun`,
  dropHere: 'Drop a plan file to open it',
  sketch: 'Sketch',
} as const;

export const topbar = {
  label: 'Plan',
  planName: 'Plan name',
  views: 'Where you are',
  newPlan: 'New plan',
  open: 'Open',
  save: 'Save file',
  list: 'List',
  settings: 'Settings',
  legend: 'Legend',
  menu: 'Menu',
  close: 'Close',
  example: 'Example',
} as const;

export const shelf = {
  label: 'Tools',
  hand: 'The hand',
  move: 'Move',
  run: 'Run',
  place: 'Place',
  fittings: 'Fittings',
  snap: 'Snap',
  fit: 'Fit',
  bigFingers: 'Big fingers',
  tools: 'Tools',
  closeTools: 'Close tools',
} as const;

export const summary = {
  label: 'Answer',
  figures: 'Figures',
  feed: 'Feed conductor',
  mainFuse: 'Main fuse',
  worstDrop: 'Worst drop',
  unprotected: 'Longest unprotected',
  noFigure: '–',
  noFeed: 'no cable in stock does it',
  noFuse: 'no fuse in stock fits',
  notWorkedOut: 'not worked out yet',
  provisional: 'provisional',
  findings: 'Findings',
  show: 'Show on the sketch',
  why: 'Why',
  whyOf: (figure: string) => `Why ${figure}?`,
  source: 'Source:',
  runs: 'Runs',
  fuses: 'Fuses',
  amplifiers: 'Amplifiers',
  assumptions: 'Assumptions in use',
  times: (n: number) => `(${n} times)`,
  checked: 'What was checked',
  strictest: (severity: string, limit: string) =>
    `Strictest published set (33 CFR 183.455): ${severity}, limit ${limit}.`,
  strictestNothing: (limit: string) => `Strictest published set (33 CFR 183.455): nothing against it, limit ${limit}.`,
  pullUp: 'Show the whole answer',
  pullDown: 'Show the sketch',
  edit: 'Edit what is selected',
  drawn: (plusMinus: string) => `drawn, ± ${plusMinus}`,
  taped: 'taped',
  mayCarry: (current: string) => `≤ ${current}`,
  unprotectedOf: (length: string) => `${length} unprotected`,
  columns: {
    run: 'Run',
    gauge: 'Gauge',
    fuse: 'Fuse',
    drop: 'Drop',
    current: 'Current',
    length: 'Length',
    amplifier: 'Amplifier',
    voltage: 'Voltage',
    cables: 'Cables',
    whole: 'Whole way',
    rating: 'Rating',
    needed: 'Needed',
    allowed: 'Cable allows',
    governs: 'Set by',
  },
  marked: 'marked on the sketch',
} as const;

export const refusals = {
  sameFitting: 'Both terminals are on one fitting. Choose a terminal of another.',
  alreadyJoined: 'These two terminals are joined already. Choose another, or edit that run.',
  gone: 'That terminal is no longer there. Choose another.',
  tooManyBends: 'A run has at most 500 bends. Leave some out.',
  planFull: 'The plan holds as many runs as it can. Delete one first.',
  refused: 'The plan cannot hold this run. Choose other terminals or bends.',
} as const;

export const saveStates = {
  idle: '',
  saving: 'Keeping...',
  saved: 'Kept in this browser',
  failed: 'Not kept: save a file',
  example: 'Example: your first change makes it your own copy',
} as const;

export const newPlan = { untitled: 'Untitled plan' } as const;
