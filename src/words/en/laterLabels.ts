/** Labels of what opens on demand: dialogs, what is selected, the list. */
import type { LengthProblem } from '../length.ts';
import type { NumberProblem } from '../number.ts';

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

const proposedToo = (n: number): string => (n === 0 ? '' : `, ${n} proposed`);

export const inspector = {
  label: 'Selected',
  nothing: 'Nothing selected',
  name: 'Name',
  /** The two lengths that say where something is. */
  axes: {
    vehicle: { x: 'From the nose', y: 'From the right side' },
    own: { x: 'From the nose', y: 'From the right side' },
    bench: { x: 'From the left end', y: 'From the far edge' },
    side: { x: 'From the nose', y: 'From the roof' },
  },
  locked: 'Lock',
  lockedHint: 'A sleeve moves nothing',
  remove: 'Delete',
  zone: 'Surroundings',
  strap: 'Factory strap to the body',
  strapLength: 'Length of the strap',
  strapArea: 'Area of the strap, mm²',
  rating: 'Rating, A',
  /** A field of one part of a fitting: 'Post: rating, A'. */
  ofPart: (part: string, label: string) => `${part}: ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
  family: 'Family',
  auto: 'Worked out',
  fixedRating: 'Fixed at',
  fixedRatingA: 'Fixed at, A',
  outputs: 'Outputs',
  output: (n: string) => `Output ${n}`,
  outputFused: (n: string) => `Output ${n} has a fuse`,
  addOutput: 'Add an output',
  removeOutput: (n: string) => `Remove output ${n}`,
  outputInUse: (n: string) => `Output ${n} has a run on it. Delete the run first, then the output.`,
  lastOutput: 'A block keeps at least one output.',
  ratedW: 'Rated output at the load wired, W',
  loadOhm: 'Load wired per channel, Ω',
  ampClass: 'Class',
  efficiency: 'Efficiency',
  regulated: 'Regulated supply',
  onboard: 'Fuses on the amplifier, A',
  onboardHint: 'Each rating, with a space between: 30 30. Write 0 for none.',
  externalMax: "Maker's largest external fuse, A",
  notTold: 'not told',
  clear: 'Clear',
  kind: 'Kind',
  from: 'From',
  to: 'To',
  taped: 'Taped length',
  tapedWins: (taped: string, drawn: string) => `Taped ${taped} counts, not the drawn ${drawn}.`,
  tapeShared: (share: string, plusMinus: string) =>
    `${share} of a longer taped run, shared by the drawing: ± ${plusMinus} until taped by itself.`,
  tapeOutdated: (taped: string, drawn: string) =>
    `Taped at ${taped} before an end or a bend was moved; drawn ${drawn} now. The greater counts until taped anew.`,
  tapeHolds: (taped: string) => `It measures ${taped} now`,
  drawnCounts: (drawn: string, plusMinus: string) => `Drawn ${drawn}, ± ${plusMinus} until taped.`,
  tapeDoubt: (taped: string, meant: string) => `${taped}? Did you mean ${meant}?`,
  tapeMeant: (meant: string) => `Take ${meant}`,
  clearTape: 'Use the drawn length again',
  rise: 'Rise and drop',
  slack: 'Slack, %',
  sheathed: 'Sheathed for its whole unprotected length',
  sheathedHint: 'A closed tube, box or conduit. Split loom and tape are no sheath.',
  nearer: 'Why nearer is impossible',
  loom: 'In a loom with others',
  carpet: 'Under carpet or insulation',
  size: 'Size',
  sizeAuto: 'Worked out',
  material: 'Material',
  insulation: 'Insulation class, °C',
  bends: (n: number) => count(n, 'bend', 'bends'),
  bend: (n: number, run: string) => `Bend ${n} of ${run}`,
  bendShort: (n: number) => `Bend ${n}`,
  addBend: 'Add a bend',
  removeBend: 'Remove this bend',
  whole: 'Whole run',
  origin: (origin: string) => `(${origin})`,
} as const;

export const keypad = {
  open: 'Keypad',
  label: (field: string) => `Keypad for ${field}`,
  back: 'Delete the last sign',
  clear: 'Clear',
  done: 'Done',
  cancel: 'Cancel',
  space: 'Space',
} as const;

export const list = {
  label: 'The plan as a list',
  hint: 'Everything the sketch can do, with form fields. Both show the same plan.',
  close: 'Close the list',
  fittings: (n: number, proposed = 0) => `${count(n, 'fitting', 'fittings')}${proposedToo(proposed)}`,
  runs: (n: number, proposed = 0) => `${count(n, 'run', 'runs')}${proposedToo(proposed)}`,
  add: 'Add a fitting',
  kind: 'Kind',
  name: 'Name',
  addDo: 'Add it',
  connect: 'Connect two terminals',
  from: 'From terminal',
  to: 'To terminal',
  choose: 'choose',
  bends: 'Bends, from first to last',
  bendsHint: 'One bend a line, two lengths with a semicolon: 1.2 m; 0.4 m',
  connectDo: 'Connect',
  split: 'Put a fitting into a run',
  splitRun: 'Run',
  splitHow: 'Where',
  splitAlong: 'At a length along it',
  splitAt: 'At a place',
  along: 'Length along the run',
  splitDo: 'Put it in',
  chooseBoth: 'Choose both terminals first.',
  chooseRun: 'Choose a run first.',
  editShort: 'Edit',
  edit: (name: string) => `Edit ${name}`,
  added: (name: string) => `${name} added.`,
  connected: (name: string) => `${name} connected.`,
  splitDone: (name: string, run: string) => `${name} put into ${run}.`,
  moved: (name: string) => `${name} moved.`,
  removed: (name: string) => `${name} deleted.`,
  at: {
    vehicle: (x: string, y: string) => `${x} from the nose, ${y} from the right side`,
    own: (x: string, y: string) => `${x} from the nose, ${y} from the right side`,
    bench: (x: string, y: string) => `${x} from the left end, ${y} from the far edge`,
    side: (x: string, y: string) => `${x} from the nose, ${y} from the roof`,
  },
  joins: (from: string, to: string) => `from ${from} to ${to}`,
  beyondRun: (length: string) => `The run is ${length} long. Enter less than that.`,
} as const;

export const fittingGroups = {
  sources: 'Sources and charging',
  protection: 'Breaking and switching',
  joining: 'Joining',
  loads: 'Loads',
} as const;

export const newPlanDialog = {
  title: 'New plan',
  vehicle: 'Vehicle',
  name: 'Name',
  drive: 'Steering wheel',
  left: 'Left-hand drive',
  right: 'Right-hand drive',
  lengthM: 'Length',
  widthM: 'Width',
  heightM: 'Height',
  frontAxleM: 'Nose to front axle',
  wheelbaseM: 'Wheelbase',
  bayM: 'Nose to firewall',
  cabM: 'Firewall to the end of the cabin',
  sillM: 'Width of a sill',
  sizes: 'Sizes',
  sizesHint: 'Middling ones of the kind: put right what you tape.',
  battery: 'Battery',
  noBattery: 'None yet',
  batteryAt: { front: 'In the engine bay', seat: 'Under a seat', rear: 'At the rear' },
  amplifiers: 'Amplifiers, by output',
  addAmplifier: (watts: number) => `Add ${watts} W`,
  chosen: (watts: readonly number[]) => `${watts.length} to place: ${watts.map((w) => `${w} W`).join(', ')}`,
  removeLast: 'Take the last one off',
  create: 'Start this plan',
  cancel: 'Cancel',
  kept: 'The plan now open is kept in this browser.',
  bayTooLong: 'The bay and the cabin together are longer than the vehicle. Make one shorter.',
  axlesTooFar: 'The rear axle would stand behind the vehicle. Make the wheelbase shorter, or the vehicle longer.',
} as const;

export const settings = {
  title: 'Settings',
  ruleSet: 'Rule set for the unprotected length',
  lengths: 'Lengths in',
  metres: 'meters',
  feet: 'feet and inches',
  sizes: 'Cable sizes',
  sae: 'SAE gauge',
  awg: 'AWG',
  mm2: 'mm²',
  stock: 'Sizes in stock',
  stockLast: 'Keep at least one size in stock.',
  families: 'Fuses in stock',
  familiesLast: 'Keep at least one family in stock.',
  engine: 'Engine always running',
  engineHint: 'Then the charging voltage alone sizes the cables.',
  electrical: 'Electrical',
  temperatures: 'Temperatures, °C',
  inputs: {
    restV: 'Voltage at rest, V',
    chargingV: 'Voltage while charging, V',
    duty: 'Duty of the music, 0.01 to 1',
    dropLimit: 'Limit of voltage drop, share of the system voltage',
    cutOutV: 'Cut-out voltage of the amplifiers, V',
    bodyOhm: 'Body resistance, Ω',
    jointOhm: 'Resistance of a joint, Ω',
    linkDropV: 'Drop across a fuse-link at its rating, V',
    usableShare: 'Usable share of the capacity, 0.05 to 1',
    peukert: 'Peukert exponent, 1 to 1.6',
    bayC: 'Engine bay',
    wingC: 'Along a fender',
    hotC: 'Beside hot parts',
    cabinC: 'Cabin',
    cargoC: 'Cargo space',
    underC: 'Under the body',
  },
} as const;

export const legend = {
  title: 'Legend',
  runs: 'Runs',
  power: 'Power: red, full line',
  ground: 'Ground: near-black, long dashes',
  remote: 'Remote lead: blue, short dashes',
  factory: "The vehicle's own cable: gray, long and short dashes",
  thickness: 'The thicker the line, the more copper.',
  hazard: 'Black on yellow: live cable that no fuse protects',
  findings: 'Findings',
  stop: 'Stop: can burn, or breaks a rule that exists to prevent fire',
  fix: 'Fix: against the rules, or the system will not work',
  note: 'Note: worth knowing; the plan may be built',
  fittings: 'Fittings',
} as const;

export const openDialog = {
  title: 'Plans',
  file: 'Open a file',
  kept: 'Kept in this browser',
  none: 'No plan is kept in this browser yet: the example is kept with its first change.',
  isOpen: 'open now',
  duplicate: 'Duplicate',
  copyOf: (name: string) => `${name}, copy`,
  rename: 'Rename',
  newName: 'New name',
  nameDone: 'Done',
  remove: 'Delete',
  deleted: (name: string) => `${name} deleted.`,
  unreadable: 'damaged plan',
  saved: (time: string) => `saved ${time}`,
} as const;

export const fields = {
  /** What is wrong with a length, and what to do. */
  lengthProblem(problem: LengthProblem, field: string, min: string, max: string): string {
    switch (problem) {
      case 'empty':
        return `${field}: enter a length, such as 1.5 m or 5 ft 3 1/2 in.`;
      case 'unreadable':
        return `${field}: this is not a length. Write it like 1.5 m, 160 cm or 5 ft 3 1/2 in.`;
      case 'negative':
        return `${field}: a length is not below zero. Leave out the minus.`;
      case 'twoDecimalSigns':
        return `${field}: there are two decimal signs. Keep one.`;
      case 'tooShort':
        return `${field}: at least ${min}.`;
      case 'tooLong':
        return `${field}: at most ${max}. Check the unit.`;
    }
  },
  numberProblem(problem: NumberProblem, field: string, min: string, max: string, unit: string): string {
    switch (problem) {
      case 'empty':
        return `${field}: enter a number.`;
      case 'unreadable':
        return `${field}: this is not a number. Write it like 12.6 or 12,6.`;
      case 'otherUnit':
        return `${field}: that is another unit. Give the figure in ${unit}.`;
      case 'tooSmall':
        return `${field}: at least ${min}.`;
      case 'tooLarge':
        return `${field}: at most ${max}.`;
    }
  },
  inDoubt: (field: string, typed: string, first: string, second: string) =>
    `${field}: is '${typed}' meant as ${first} or as ${second}? Write it one of these two ways.`,
  pairProblem: (line: number) => `Bend ${line}: write two lengths with a semicolon between them: 1.2 m; 0.4 m.`,
  kept: 'The value before is kept.',
  noneKept: 'Until then no value is kept.',
} as const;
