import type { Assessment, NotTold, RuleId, Severity, UncheckedId } from '../../assess/answer.ts';
import { ruleSets } from './fittingChoices.ts';

const plural = (count: number, one: string, many: string): string => (count === 1 ? one : many);

/** The verdict in one line: RULES, section 1. */
export function headline({ kind, count }: Assessment['headline'], ruleSet: Assessment['ruleSet']): string {
  switch (kind) {
    case 'stop':
      return `${count} to stop for`;
    case 'fix':
      return `${count} to fix before you build`;
    case 'provisional':
      return `Provisional: ${count} ${plural(count, 'length', 'lengths')} to tape`;
    case 'nothing':
      return `Nothing found against the ${ruleSets[ruleSet]}`;
    case 'empty':
      return 'Nothing drawn yet';
  }
}

/** Something is drawn, but there is nothing to work out yet. */
export const nothingJoined = 'Nothing joined yet';
export const nothingFed = 'Nothing fed yet';

export const headlineEmptyHint =
  'Place a battery and an amplifier, then let a feed be proposed or draw the run between them.';

const NOT_TOLD: Readonly<Record<NotTold['kind'], (count: number) => string>> = {
  lengthsNotTaped: (count) => `${count} ${plural(count, 'length', 'lengths')} not taped`,
  surroundingsNotMarked: (count) => `surroundings of ${count} ${plural(count, 'run', 'runs')} not marked`,
  batteryAssumed: (count) => plural(count, 'battery data assumed', `data of ${count} batteries assumed`),
  cableUnmarked: (count) => `${count} ${plural(count, 'cable', 'cables')} unmarked`,
  loadUnknown: (count) => plural(count, 'load of 1 amplifier unknown', `loads of ${count} amplifiers unknown`),
};

export const notToldLabel = 'Not told:';
export const notTold = (items: readonly NotTold[]): string =>
  items.map(({ kind, ids }) => NOT_TOLD[kind](ids.length)).join(', ');

export const unchecked: Readonly<Record<UncheckedId, string>> = {
  charging: 'what the alternator can carry (none drawn)',
};

export const notCheckedLabel = 'Not checked yet:';
export const notChecked = (items: readonly { rule: UncheckedId }[]): string =>
  items.map(({ rule }) => unchecked[rule]).join(', ');

/** Both counts in one line, where there is no room for the lists. */
export const brief = (told: number, checked: number): string =>
  `${told === 0 ? 'All told' : `${told} ${plural(told, 'matter', 'matters')} not told`}, ${
    checked === 0 ? 'all checked' : `${checked} not checked yet`
  }`;

/** Severity as a word; the shape and the colour come after it. */
export const severities: Readonly<Record<Severity, string>> = { stop: 'Stop', fix: 'Fix', note: 'Note' };
export const notesCount = (count: number): string => `${count} ${plural(count, 'note', 'notes')}`;
/** Under a list that is long: of how many it shows the first. */
export const showAll = (count: number): string => `Show all ${count}`;
export const showFirst = (count: number): string => `Show the first ${count}`;

/** What each rule is about, for the list of what was checked. */
export const rules: Readonly<Record<RuleId, string>> = {
  'unprotected-length': 'unprotected length',
  'no-device': 'a fuse on every live path',
  'fuse-over-conductor': 'fuse against conductor',
  'step-down': 'smaller cable behind a larger fuse',
  'fuse-under-load': 'fuse against current',
  'fuse-over-maker': "amplifier maker's largest fuse",
  'no-fuse-qualifies': 'a fuse that fits',
  'no-size-in-stock': 'a cable that does it',
  'rating-not-held': 'ratings that are made',
  'link-under-voltage': 'fuse against system voltage',
  'holder-too-hot': 'temperature at the fuse holder',
  'fuse-in-return': 'no fuse in the return',
  'drop-cables': 'voltage drop of the cables',
  'drop-whole': 'voltage drop of the whole way',
  'below-cut-out': 'voltage at the amplifier',
  'cannot-carry': 'power that can be carried',
  ampacity: 'ampacity',
  heating: 'conductor temperature',
  'ground-missing': 'grounds',
  'ground-smaller': 'ground against feed',
  'not-fed': 'every amplifier fed',
  'loose-end': 'loose ends',
  'no-rating': 'rated output',
  'ratings-differ': 'output against on-board fuses',
  'load-unknown': 'load impedance',
  'ask-external-fuse': 'external fuse of the amplifier',
  'unmarked-cable': 'unmarked cable',
  'firewall-no-grommet': 'pass-through at the firewall',
  'pass-through-shared': 'one cable in each pass-through',
  'cable-changes': 'one cable from end to end',
  'source-short': 'source joined to body',
  'series-batteries': 'batteries in series',
  'positive-earth': 'negative at the body',
  'small-separate-run': 'small separate runs',
  'short-not-cleared': 'short to body',
  'short-uncertain': 'time limits of the fuses',
  'back-fed': 'short fed from another source',
  'breaking-capacity': 'breaking capacity',
  selectivity: 'selectivity of the fuses',
  'overload-heating': 'heating under overload',
  'charging-deficit': 'mean current against the alternator',
  'capacitor-precharge': 'pre-charge of capacitors',
  'capacitor-unfused': 'capacitors as sources',
  'joint-heat': 'heat of the joints',
  'contact-overloaded': 'rating of relays, switches and bars',
  'takeoff-overloaded': 'factory fuse at a take-off',
  'switch-open': 'open switches',
  'grommet-too-small': 'grommets against the cables in them',
  'bend-too-tight': 'bends, where a radius is told',
  'cable-over-terminal': 'cables against their terminals',
  'clad-as-copper': 'copper all through',
  'size-not-proven': 'size against counted strands',
  'parallel-one-fuse': 'parallel cables, each fused',
  'ground-on-sensor': 'sensor on the negative post',
  'strap-smaller': 'factory strap against feed',
  'tape-doubtful': 'lengths that the drawing speaks against',
  'reducer-length': 'length of reducers',
  'supply-wiring': 'cable and fuse of chargers and alternators',
};
