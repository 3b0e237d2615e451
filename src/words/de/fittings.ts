/** What fittings, terminals and runs are called. */
import type { FittingKind } from '../../plan/schema.ts';

/** Full names, as in sentences and lists. */
export const kinds: Readonly<Record<FittingKind, string>> = {
  battery: 'Batterie',
  fuse: 'Sicherung',
  passThrough: 'Durchführung',
  block: 'Verteilerblock',
  amplifier: 'Endstufe',
  ground: 'Massepunkt',
  breaker: 'Thermoschalter',
  bus: 'Sammelschiene',
  reducer: 'Reduzierung',
  load: 'Anderer Verbraucher',
  alternator: 'Generator',
  jumpPost: 'Starthilfepunkt',
  takeOff: 'Gesicherter Abgriff',
  charger: 'Ladewandler',
  relay: 'Trennrelais',
  switch: 'Trennschalter',
  capacitor: 'Kondensator',
  continuation: 'Fortsetzungspunkt',
};

/** Short names, for the shelf. */
export const kindsShort: Readonly<Record<FittingKind, string>> = {
  ...kinds,
  passThrough: 'Durch\u00adführung',
  block: 'Verteiler',
  ground: 'Masse',
  breaker: 'Automat',
  bus: 'Schiene',
  load: 'Verbraucher',
  jumpPost: 'Starthilfe',
  takeOff: 'Abgriff',
  charger: 'Lader',
  relay: 'Relais',
  switch: 'Schalter',
  continuation: 'Weiter',
};

/** What the first fuse after a battery is called. */
export const mainFuse = 'Hauptsicherung';
/** Every later one. */
export const nextFuse = 'Sicherung';
export const fuseOf = (consumer: string): string => `Sicherung ${consumer}`;

const TERMINALS: Readonly<Record<string, string>> = {
  positive: 'Plus',
  negative: 'Minus',
  in: 'Eingang',
  out: 'Ausgang',
  through: 'Durchgang',
  bus: 'Schiene',
  supply: 'Plus',
  ground: 'Masse',
  remote: 'Remote',
  body: 'Karosserie',
  supply2: 'zweites Plus',
  ground2: 'zweite Masse',
  wide: 'dickes Ende',
  narrow: 'dünnes Ende',
  stud: 'Bolzen',
  input: 'Eingang',
  output: 'Ausgang',
};

/** 'out3' -> 'Abgang 3'. */
export function terminal(name: string): string {
  const output = /^out(\d+)$/.exec(name);
  return output === null ? (TERMINALS[name] ?? name) : `Abgang ${output[1]}`;
}

/** 'Endstufe hinten, Plus'. */
export const terminalOf = (fittingName: string, terminalName: string): string =>
  `${fittingName}, ${terminal(terminalName)}`;

/** 'Batterie – Hauptsicherung': made from the ends. */
export const runName = (from: string, to: string): string => `${from} – ${to}`;
