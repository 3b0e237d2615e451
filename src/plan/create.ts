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
  type Sheet,
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

/** Voltages by which a system of 12 V or 24 V goes until told otherwise; 24 V is two of 12 V in series: the double. */
export function assumedVolts(systemV: Settings['systemV']): Pick<Settings, 'restV' | 'chargingV' | 'cutOutV'> {
  const inSeries = systemV / 12;
  return {
    restV: assumed(12.6 * inSeries, 'feedrunRules'),
    chargingV: assumed(14.4 * inSeries, 'feedrunRules'),
    cutOutV: assumed(10.5 * inSeries, 'commonPractice'),
  };
}

/**
 * Settings of a new plan. On a bench the return is the board's own ground bar and the air is that of a room.
 * Only link families with a published breaking capacity that stand in common holders are on.
 */
export function defaultSettings(sizeSystem: SizeSystem = 'sae', outline: OutlineKind = 'vehicle'): Settings {
  const onBench = outline === 'bench';
  const { restV, chargingV, cutOutV } = assumedVolts(12);
  return {
    ruleSet: 'vehicle',
    systemV: 12,
    showLength: 'm',
    sizeSystem,
    stock: defaultStock(sizeSystem),
    linkFamilies: ['iso8820-3-E', 'iso8820-3-C', 'iso8820-5-SF30', 'iso8820-5-SF51'],
    ownLinks: [],
    engineAlwaysRunning: false,
    restV,
    chargingV,
    duty: assumed(1 / 3, 'feedrunRules'),
    dropLimit: assumed(0.03, 'abycE11'),
    cutOutV,
    bodyOhm: onBench ? assumed(0.0001, 'feedrunRules') : assumed(0.001, 'commonPractice'),
    jointOhm: assumed(0.0001, 'feedrunRules'),
    linkDropV: assumed(0.075, 'linkDrop'),
    bayC: assumed(80, 'feedrunRules'),
    wingC: assumed(65, 'feedrunRules'),
    hotC: assumed(100, 'feedrunRules'),
    cabinC: assumed(onBench ? 30 : 50, 'feedrunRules'),
    cargoC: assumed(50, 'feedrunRules'),
    underC: assumed(50, 'feedrunRules'),
    usableShare: assumed(0.5, 'feedrunRules'),
    peukert: assumed(1.2, 'feedrunRules'),
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
  showLength?: Settings['showLength'];
}): Plan {
  const { id, name, sheetId, sheetName = '', outline, mirrored, sizeSystem, showLength = 'm' } = plan;
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    id,
    name,
    settings: { ...defaultSettings(sizeSystem, outline.kind), showLength },
    sheets: [newSheet({ id: sheetId, name: sheetName, outline, mirrored })],
    fittings: [],
    runs: [],
    areas: [],
    ties: [],
    mounts: [],
    pictures: [],
  };
}

/** A sheet of an outline with real sizes: the whole of it from above, unless told otherwise. */
export const newSheet = (
  sheet: Pick<Sheet, 'id' | 'name' | 'outline' | 'mirrored'> & Partial<Pick<Sheet, 'part' | 'view'>>,
): Sheet => {
  const { id, name, outline, mirrored, part = 'whole', view = 'above' } = sheet;
  return roundSheet({ id, name, outline, part, view, scale: { value: 1, origin: 'told' }, mirrored });
};

/** Where a new fitting goes, and what it is called. */
export interface NewFitting {
  readonly id: string;
  readonly name: string;
  readonly sheetId: string;
  readonly at: Point;
}

type FittingBase = Pick<Fitting, 'id' | 'name' | 'sheetId' | 'at' | 'zone' | 'takes' | 'locked'>;

/** What the factory is taken to have laid from the battery to a post or a stud elsewhere. */
const remoteSource = () => ({
  ccaA: assumed(600, 'feedrunRules'),
  capacityAh: assumed(60, 'feedrunRules'),
  cable: { lengthM: assumed(3, 'feedrunRules'), areaMm2: assumed(50, 'feedrunRules') },
});

const MAKERS: { readonly [K in FittingKind]: (base: FittingBase, outline: OutlineKind) => FittingOf<K> } = {
  battery: (base, outline) => ({
    ...base,
    kind: 'battery',
    chemistry: 'leadAcid',
    ccaA: assumed(600, 'feedrunRules'),
    ccaStandard: 'sae',
    capacityAh: assumed(60, 'feedrunRules'),
    internalOhm: null,
    postLink: null,
    sensedNegative: null,
    strap: outline === 'bench' ? null : { lengthM: assumed(0.4, 'feedrunRules'), areaMm2: assumed(25, 'feedrunRules') },
  }),
  fuse: (base) => ({ ...base, kind: 'fuse', link: autoLink() }),
  passThrough: (base) => ({ ...base, kind: 'passThrough', grommetInsideMm: null }),
  block: (base) => ({
    ...base,
    kind: 'block',
    outputs: ['out1', 'out2'].map((terminal) => ({ terminal, link: autoLink() })),
    outputsTake: null,
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
    supplyInputs: 'one',
    idleA: assumed(1, 'commonPractice'),
    duty: null,
  }),
  ground: (base) => ({ ...base, kind: 'ground' }),
  breaker: (base) => ({ ...base, kind: 'breaker', link: autoLink() }),
  bus: (base) => ({ ...base, kind: 'bus', ratedA: null }),
  reducer: (base) => ({ ...base, kind: 'reducer', lengthM: assumed(0.1, 'feedrunRules') }),
  load: (base) => ({ ...base, kind: 'load', currentA: assumed(10, 'feedrunRules') }),
  alternator: (base) => ({
    ...base,
    kind: 'alternator',
    ratedA: assumed(90, 'commonPractice'),
    idleA: null,
    hotShare: assumed(0.8, 'commonPractice'),
    vehicleA: assumed(35, 'commonPractice'),
  }),
  jumpPost: (base) => ({ ...base, kind: 'jumpPost', ...remoteSource() }),
  takeOff: (base) => ({
    ...base,
    kind: 'takeOff',
    ...remoteSource(),
    fuseA: null,
    usedA: assumed(0, 'feedrunRules'),
  }),
  charger: (base) => ({
    ...base,
    kind: 'charger',
    outputV: assumedVolts(12).chargingV,
    outputMaxA: assumed(30, 'feedrunRules'),
    efficiency: assumed(0.9, 'commonPractice'),
  }),
  relay: (base) => ({ ...base, kind: 'relay', ratedA: null, contactOhm: assumed(0.0005, 'feedrunRules') }),
  switch: (base) => ({
    ...base,
    kind: 'switch',
    closed: true,
    ratedA: null,
    contactOhm: assumed(0.0002, 'feedrunRules'),
  }),
  capacitor: (base) => ({
    ...base,
    kind: 'capacitor',
    capacitanceF: assumed(1, 'feedrunRules'),
    esrOhm: assumed(0.002, 'commonPractice'),
    precharged: false,
  }),
  // onto its own sheet until told: `newContinuation` is the way to one that goes on elsewhere
  continuation: (base) => ({ ...base, kind: 'continuation', other: { sheetId: base.sheetId, at: base.at } }),
};

/**
 * A new fitting of that kind. A block comes with two fused outputs; a battery in a vehicle with the vehicle's own strap
 * from its negative post to the body, assumed.
 */
export function newFitting<K extends FittingKind>(
  kind: K,
  { id, name, sheetId, at }: NewFitting,
  outline: OutlineKind = 'vehicle',
): FittingOf<K> {
  return MAKERS[kind]({ id, name, sheetId, at: roundPoint(at), zone: 'auto', takes: null, locked: false }, outline);
}

/**
 * A new fitting for a place in that plan: as `newFitting`, knowing the outline and the system voltage, and that only the
 * first battery has the vehicle's own strap. A strap wrongly assumed on a second battery would hide that its ground is
 * missing.
 */
export function newFittingIn(plan: Plan, kind: FittingKind, place: NewFitting): Fitting {
  const outline = plan.sheets.find(({ id }) => id === place.sheetId)?.outline.kind;
  const fitting: Fitting = newFitting(kind, place, outline);
  if (fitting.kind === 'charger') return { ...fitting, outputV: assumedVolts(plan.settings.systemV).chargingV };
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
    tapedAs: 'run',
    zone: 'auto',
    sheathed: false,
    nearerImpossible: null,
    inLoom: false,
    underCarpet: false,
    bundled: 1,
    bendRadiusMm: null,
    conductor: {
      size: 'auto',
      material: assumed('copper', 'feedrunRules'),
      insulationC: assumed(105, 'feedrunRules'),
      strands: null,
      copperThrough: null,
    },
    fromJointOhm: null,
    toJointOhm: null,
    locked: false,
  });
}
