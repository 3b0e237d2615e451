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
  open: 'Plans',
  save: 'Save file',
  list: 'List',
  alternatives: 'Alternatives',
  settings: 'Settings',
  legend: 'Legend',
  view: 'View',
  workView: 'Work view',
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
  more: 'More',
  moreFittings: 'More fittings',
  moreHeld: (kind: string) => `More fittings, ${kind} in the hand`,
  snap: 'Snap',
  fit: 'Fit',
  tools: 'Tools',
  closeTools: 'Close tools',
  /** After 'Tools', for who does not see the symbol. */
  inHand: (what: string) => `, in the hand: ${what}`,
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
  savedShort: 'Kept',
  failed: 'Not kept: save a file',
  example: 'Example: your first change makes it your own copy',
} as const;

export const newPlan = { untitled: 'Untitled plan' } as const;
