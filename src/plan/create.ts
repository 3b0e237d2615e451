/** New plans, fittings and runs, with the defaults of the project's rules; each assumed value names its source. */
import { nanoid } from 'nanoid';
import type { SourceId } from '../calc/sources.ts';
import { defaultStock, type SizeSystem } from './gauges.ts';
import { roundPoint, roundRun, roundSheet } from './round.ts';
import {
  type Fitting,
  type FittingKind,
  type FittingOf,
  type Input,
  type Link,
  type Outline,
  PLAN_FORMAT,
  PLAN_VERSION,
  type Plan,
  type Point,
  type Run,
  type RunKind,
  type Settings,
  type TerminalRef,
} from './schema.ts';

/** A random id, never used before: 21 letters, digits, - and _. */
export const newId = (): string => nanoid();

type AmpClass = FittingOf<'amplifier'>['ampClass'];
type OutlineKind = Outline['kind'];

const assumed = <T>(value: T, source: SourceId): Input<T> => ({ value, origin: 'assumed', source });

/** Output over input at full sine, supply included. Source: common practice, from memory. */
const EFFICIENCY: Record<AmpClass, number> = { D: 0.8, AB: 0.55 };

/** The efficiency taken for an amplifier of that class until told otherwise. */
export const assumedEfficiency = (ampClass: AmpClass): Input<number> => assumed(EFFICIENCY[ampClass], 'commonPractice');

/** A fuse-link whose rating and family the answer chooses. */
export const autoLink = (): Link => ({ ratingA: 'auto', family: 'auto' });

/**
 * Settings of a new plan. On a bench the return is the board's own ground bar and the air is that of a room.
 * Only link families with a published breaking capacity that stand in common holders are on.
 */
export function defaultSettings(sizeSystem: SizeSystem = 'sae', outline: OutlineKind = 'panelVan'): Settings {
  const onBench = outline === 'bench';
  return {
    ruleSet: 'vehicle',
    systemV: 12,
    showLength: 'm',
    sizeSystem,
    stock: defaultStock(sizeSystem),
    linkFamilies: ['iso8820-3-E', 'iso8820-3-C', 'iso8820-5-SF30', 'iso8820-5-SF51'],
    engineAlwaysRunning: false,
    restV: assumed(12.6, 'feedrunRules'),
    chargingV: assumed(14.4, 'feedrunRules'),
    duty: assumed(1 / 3, 'feedrunRules'),
    dropLimit: assumed(0.03, 'abycE11'),
    cutOutV: assumed(10.5, 'commonPractice'),
    bodyOhm: onBench ? assumed(0.0001, 'feedrunRules') : assumed(0.001, 'commonPractice'),
    jointOhm: assumed(0.0001, 'feedrunRules'),
    linkDropV: assumed(0.075, 'linkDrop'),
    bayC: assumed(80, 'feedrunRules'),
    wingC: assumed(65, 'feedrunRules'),
    hotC: assumed(100, 'feedrunRules'),
    cabinC: assumed(onBench ? 30 : 50, 'feedrunRules'),
    cargoC: assumed(50, 'feedrunRules'),
    underC: assumed(50, 'feedrunRules'),
  };
}

/** An empty plan of one sheet. `sheetName` is a word a person reads; it may stay empty while there is one sheet. */
export function newPlan(plan: {
  id: string;
  name: string;
  sheetId: string;
  sheetName?: string;
  outline: Outline;
  mirrored: boolean;
  sizeSystem?: SizeSystem;
}): Plan {
  const { id, name, sheetId, sheetName = '', outline, mirrored, sizeSystem } = plan;
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    id,
    name,
    settings: defaultSettings(sizeSystem, outline.kind),
    sheets: [roundSheet({ id: sheetId, name: sheetName, outline, scale: { value: 1, origin: 'told' }, mirrored })],
    fittings: [],
    runs: [],
    areas: [],
    ties: [],
    mounts: [],
    pictures: [],
  };
}

/** Where a new fitting goes, and what it is called. */
export interface NewFitting {
  readonly id: string;
  readonly name: string;
  readonly sheetId: string;
  readonly at: Point;
}

type FittingBase = Pick<Fitting, 'id' | 'name' | 'sheetId' | 'at' | 'zone' | 'locked'>;

const MAKERS: { readonly [K in FittingKind]: (base: FittingBase, outline: OutlineKind) => FittingOf<K> } = {
  battery: (base, outline) => ({
    ...base,
    kind: 'battery',
    ccaA: assumed(600, 'feedrunRules'),
    capacityAh: assumed(60, 'feedrunRules'),
    strap: outline === 'bench' ? null : { lengthM: assumed(0.4, 'feedrunRules'), areaMm2: assumed(25, 'feedrunRules') },
  }),
  fuse: (base) => ({ ...base, kind: 'fuse', link: autoLink() }),
  passThrough: (base) => ({ ...base, kind: 'passThrough' }),
  block: (base) => ({
    ...base,
    kind: 'block',
    outputs: ['out1', 'out2'].map((terminal) => ({ terminal, link: autoLink() })),
  }),
  amplifier: (base) => ({
    ...base,
    kind: 'amplifier',
    ratedW: null,
    loadOhm: null,
    ampClass: 'D',
    efficiency: assumedEfficiency('D'),
    regulated: assumed(true, 'feedrunRules'),
    onboardFusesA: null,
    externalFuseMaxA: null,
  }),
  ground: (base) => ({ ...base, kind: 'ground' }),
};

/**
 * A new fitting of that kind. A block comes with two fused outputs; a battery in a vehicle with the vehicle's own strap
 * from its negative post to the body, assumed.
 */
export function newFitting<K extends FittingKind>(
  kind: K,
  { id, name, sheetId, at }: NewFitting,
  outline: OutlineKind = 'panelVan',
): FittingOf<K> {
  return MAKERS[kind]({ id, name, sheetId, at: roundPoint(at), zone: 'auto', locked: false }, outline);
}

/**
 * A new fitting for a place in that plan: as `newFitting`, knowing the outline, and that only the first battery has
 * the vehicle's own strap. A strap wrongly assumed on a second battery would hide that its ground is missing.
 */
export function newFittingIn(plan: Plan, kind: FittingKind, place: NewFitting): Fitting {
  const outline = plan.sheets.find(({ id }) => id === place.sheetId)?.outline.kind;
  const fitting: Fitting = newFitting(kind, place, outline);
  const isSecond = plan.fittings.some((other) => other.kind === 'battery');
  return fitting.kind === 'battery' && isSecond ? { ...fitting, strap: null } : fitting;
}

/** A new run: the answer chooses its size; copper of class 105 degC is what is to be bought. */
export function newRun(run: {
  id: string;
  name: string;
  kind: RunKind;
  sheetId: string;
  from: TerminalRef;
  to: TerminalRef;
  bends: readonly Point[];
}): Run {
  return roundRun({
    ...run,
    bends: [...run.bends],
    riseM: 0,
    slackPercent: 0,
    tapedM: null,
    zone: 'auto',
    sheathed: false,
    nearerImpossible: null,
    inLoom: false,
    underCarpet: false,
    conductor: {
      size: 'auto',
      material: assumed('copper', 'feedrunRules'),
      insulationC: assumed(105, 'feedrunRules'),
    },
    locked: false,
  });
}
