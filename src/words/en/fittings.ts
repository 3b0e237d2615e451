import type { FittingKind, LinkFamily, Outline, RunKind, Settings, Zone } from '../../plan/schema.ts';

/** Full names, as in sentences and lists. */
export const kinds: Readonly<Record<FittingKind, string>> = {
  battery: 'Battery',
  fuse: 'Fuse',
  passThrough: 'Pass-through',
  block: 'Distribution block',
  amplifier: 'Amplifier',
  ground: 'Ground point',
};

/** Short names, for the shelf. */
export const kindsShort: Readonly<Record<FittingKind, string>> = {
  battery: 'Battery',
  fuse: 'Fuse',
  passThrough: 'Pass-through',
  block: 'Block',
  amplifier: 'Amplifier',
  ground: 'Ground',
};

/** What the first fuse after a battery is called. */
export const mainFuse = 'Main fuse';
/** Every later one. */
export const nextFuse = 'Fuse';

const TERMINALS: Readonly<Record<string, string>> = {
  positive: 'positive',
  negative: 'negative',
  in: 'in',
  out: 'out',
  through: 'through',
  bus: 'bus',
  supply: 'supply',
  ground: 'ground',
  remote: 'remote',
  body: 'body',
};

/** 'out3' -> 'output 3'. */
export function terminal(name: string): string {
  const output = /^out(\d+)$/.exec(name);
  return output === null ? (TERMINALS[name] ?? name) : `output ${output[1]}`;
}

/** 'Rear amplifier, supply'. */
export const terminalOf = (fittingName: string, terminalName: string): string =>
  `${fittingName}, ${terminal(terminalName)}`;

export const runKinds: Readonly<Record<RunKind, string>> = {
  power: 'Power',
  ground: 'Ground',
  remote: 'Remote lead',
};

/** 'Battery to main fuse': made from the ends, the second name with a small first letter unless it is spelled in capitals. */
export function runName(from: string, to: string): string {
  const second = /^[A-Z][a-z]/.test(to) ? to.charAt(0).toLowerCase() + to.slice(1) : to;
  return `${from} to ${second}`;
}

export const zones: Readonly<Record<Zone, string>> = {
  auto: 'From the outline',
  bay: 'Engine bay',
  wing: 'Along a wing',
  hot: 'Beside hot parts',
  cabin: 'Cabin',
  cargo: 'Cargo space',
  under: 'Under the body',
};

export const linkFamilies: Readonly<Record<LinkFamily, string>> = {
  'iso8820-3-C': 'Blade, ISO 8820-3 type C',
  'iso8820-3-E': 'Blade, ISO 8820-3 type E',
  'iso8820-3-F': 'Blade, ISO 8820-3 type F',
  'iso8820-5-SF30': 'Bolt-in, ISO 8820-5 type SF30',
  'iso8820-5-SF51': 'Bolt-in, ISO 8820-5 type SF51',
  'slotted-long': 'Slotted bolt-in, long',
  'slotted-short': 'Slotted bolt-in, short',
  'ul248-15-T': 'UL 248-15 class T',
};

export const materials = {
  copper: 'Copper',
  cca10: 'Copper-clad aluminium, 10 %',
  cca15: 'Copper-clad aluminium, 15 %',
  aluminium: 'Aluminium',
} as const;

export const ampClasses = { D: 'Class D', AB: 'Class AB' } as const;

export const outlines: Readonly<Record<Outline['kind'], string>> = {
  panelVan: 'Panel van',
  bench: 'Bench board',
};

export const ruleSets: Readonly<Record<Settings['ruleSet'], string>> = {
  vehicle: 'vehicle rule set',
  boatCfr: 'boat rule set (33 CFR 183.455)',
  boatAbyc: 'boat rule set (ABYC E-11)',
};

export const origins = {
  assumed: 'assumed',
  told: 'told',
  measured: 'measured',
  drawn: 'drawn',
  published: 'published',
  choice: 'our choice',
  memory: 'from memory',
} as const;
