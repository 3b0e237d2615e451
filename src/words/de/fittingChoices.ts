/** What can be chosen of fittings, runs and sheets; not needed before something is selected or told. */
import type { Body, LinkFamily, RunKind, Settings, Zone } from '../../plan/schema.ts';

const runKinds: Readonly<Record<RunKind, string>> = {
  power: 'Plus',
  ground: 'Masse',
  remote: 'Schaltleitung',
  factory: 'Leitung ab Werk',
};

const zones: Readonly<Record<Zone, string>> = {
  auto: 'Aus dem Umriss',
  bay: 'Motorraum',
  wing: 'Entlang Kotflügel',
  hot: 'Neben heißen Teilen',
  cabin: 'Innenraum',
  cargo: 'Laderaum',
  under: 'Unter dem Boden',
};

const linkFamilies: Readonly<Record<LinkFamily, string>> = {
  'iso8820-3-C': 'Flachsicherung, ISO 8820-3 Typ C',
  'iso8820-3-E': 'Flachsicherung, ISO 8820-3 Typ E',
  'iso8820-3-F': 'Flachsicherung, ISO 8820-3 Typ F',
  'iso8820-5-SF30': 'Schraubsicherung, ISO 8820-5 Typ SF30',
  'iso8820-5-SF51': 'Schraubsicherung, ISO 8820-5 Typ SF51',
  'slotted-long': 'Geschlitzte Schraubsicherung, lang',
  'slotted-short': 'Geschlitzte Schraubsicherung, kurz',
  'ul248-15-T': 'UL 248-15 Klasse T',
  'post-link': 'Einsatz auf dem Batteriepol',
  'thermal-breaker': 'Thermoschalter',
  own1: 'Eigene 1',
  own2: 'Eigene 2',
  own3: 'Eigene 3',
  own4: 'Eigene 4',
  own5: 'Eigene 5',
  own6: 'Eigene 6',
};

const materials = {
  copper: 'Kupfer',
  cca10: 'Kupferkaschiertes Aluminium, 10 %',
  cca15: 'Kupferkaschiertes Aluminium, 15 %',
  aluminium: 'Aluminium',
} as const;

const ampClasses = { D: 'Klasse D', AB: 'Klasse AB' } as const;

const outlines: Readonly<Record<Body | 'own' | 'bench', string>> = {
  hatchback: 'Schrägheck',
  saloon: 'Stufenheck',
  estate: 'Kombi',
  pickup: 'Pritschenwagen',
  panelVan: 'Kastenwagen',
  smallBus: 'Kleinbus',
  own: 'Eigener Umriss',
  bench: 'Übungsbrett',
};

export const ruleSets: Readonly<Record<Settings['ruleSet'], string>> = {
  vehicle: 'Regelsatz Fahrzeug',
  boatCfr: 'Regelsatz Boot (33 CFR 183.455)',
  boatAbyc: 'Regelsatz Boot (ABYC E-11)',
};

const origins = {
  assumed: 'angenommen',
  told: 'angegeben',
  measured: 'gemessen',
  // under a length, in a narrow table
  drawn: 'gezeich\u00adnet',
  published: 'veröffentlicht',
  choice: 'unsere Wahl',
  memory: 'aus dem Gedächtnis',
} as const;

export const choices = { runKinds, zones, linkFamilies, materials, ampClasses, outlines, ruleSets, origins };
