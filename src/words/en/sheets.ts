/** Sheets of one vehicle, points where cables go on from one to another, and outlines drawn by the user. */
export const sheets = {
  label: 'Sheets',
  add: '+ Sheet',
  addTitle: 'Add a sheet',
  edit: (name: string) => `Change ${name}`,
  editShort: 'Change',
  name: 'Name of the sheet',
  drawOutline: 'Draw its outline',
  remove: 'Delete the sheet',
  removeRefused: 'Something on it, or a cable that leads there, is locked. Unlock it first.',
  done: 'Done',
} as const;

export const continuation = {
  goTo: (sheet: string) => `Go to ${sheet}`,
  on: (sheet: string) => `On ${sheet}`,
  hint: 'One point of one cable, drawn on two sheets. It cuts nothing.',
} as const;

export const outlineEditor = {
  title: 'Own outline',
  picture: 'The outline from above, nose to the left',
  hint: 'Drag a corner or a line. Tap the edge for a new corner.',
  lengthM: 'Length',
  widthM: 'Width',
  heightM: 'Height',
  firewall: 'Firewall, from the nose',
  cargo: 'Cargo begins, from the nose',
  none: 'Empty: there is none',
  corner: (number: number, of: number) => `Corner ${number} of ${of}`,
  previous: 'Previous corner',
  next: 'Next corner',
  addCorner: 'Add a corner behind it',
  removeCorner: 'Remove this corner',
  x: 'Corner, from the nose',
  y: 'Corner, from the right side',
  rectangle: 'Rectangle',
  undo: 'Undo in the outline',
  redo: 'Redo in the outline',
  faults: {
    crosses: 'The edge crosses or touches itself. Move a corner, or undo.',
    bayTooLong: 'Firewall and cargo line reach beyond the rear. Move them forward, or make the outline longer.',
  },
  refused: 'The outline does not fit its bounds and was not taken.',
  use: 'Use for this sheet',
  onAllSheets: (sheets: number) => `Use on all ${sheets} sheets of this vehicle`,
  cancel: 'Cancel',
  templateName: 'Name of the template',
  keep: 'Keep as template',
  kept: (name: string) => `${name} is kept as a template.`,
  notKept: 'This browser does not keep templates.',
} as const;

export const templates = {
  title: 'Own templates',
  remove: (name: string) => `Delete the template ${name}`,
  removeShort: 'Delete',
} as const;
