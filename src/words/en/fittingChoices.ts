/** What can be chosen of fittings, runs and sheets; not needed before something is selected or told. */
import type { Body, LinkFamily, RunKind, Settings, Zone } from '../../plan/schema.ts';

const runKinds: Readonly<Record<RunKind, string>> = {
  power: 'Power',
  ground: 'Ground',
  remote: 'Remote lead',
  factory: "Vehicle's own cable",
};

const zones: Readonly<Record<Zone, string>> = {
  auto: 'From the outline',
  bay: 'Engine bay',
  wing: 'Along a fender',
  hot: 'Beside hot parts',
  cabin: 'Cabin',
  cargo: 'Cargo space',
  under: 'Under the body',
};

const linkFamilies: Readonly<Record<LinkFamily, string>> = {
  'iso8820-3-C': 'Blade, ISO 8820-3 type C',
  'iso8820-3-E': 'Blade, ISO 8820-3 type E',
  'iso8820-3-F': 'Blade, ISO 8820-3 type F',
  'iso8820-5-SF30': 'Bolt-in, ISO 8820-5 type SF30',
  'iso8820-5-SF51': 'Bolt-in, ISO 8820-5 type SF51',
  'slotted-long': 'Slotted bolt-in, long',
  'slotted-short': 'Slotted bolt-in, short',
  'ul248-15-T': 'UL 248-15 class T',
  'post-link': 'Link on the battery post',
  'thermal-breaker': 'Thermal breaker',
  own1: 'Own 1',
  own2: 'Own 2',
  own3: 'Own 3',
  own4: 'Own 4',
  own5: 'Own 5',
  own6: 'Own 6',
};

const materials = {
  copper: 'Copper',
  cca10: 'Copper-clad aluminum, 10 %',
  cca15: 'Copper-clad aluminum, 15 %',
  aluminium: 'Aluminum',
} as const;

const ampClasses = { D: 'Class D', AB: 'Class AB' } as const;

const outlines: Readonly<Record<Body | 'own' | 'bench', string>> = {
  hatchback: 'Hatchback',
  saloon: 'Sedan',
  estate: 'Station wagon',
  pickup: 'Pickup',
  panelVan: 'Panel van',
  smallBus: 'Small bus',
  own: 'Own outline',
  bench: 'Bench board',
};

export const ruleSets: Readonly<Record<Settings['ruleSet'], string>> = {
  vehicle: 'vehicle rule set',
  boatCfr: 'boat rule set (33 CFR 183.455)',
  boatAbyc: 'boat rule set (ABYC E-11)',
};

const origins = {
  assumed: 'assumed',
  told: 'told',
  measured: 'measured',
  drawn: 'drawn',
  published: 'published',
  choice: 'our choice',
  memory: 'from memory',
} as const;

export const choices = { runKinds, zones, linkFamilies, materials, ampClasses, outlines, ruleSets, origins };
