/** New plans, sheets and runs, with the defaults of the project's rules; each assumed value names its source. */
import { nanoid } from 'nanoid';
import { assumed } from './assumed.ts';
import { defaultStock, type SizeSystem } from './gauges.ts';
import { roundRun, roundSheet } from './round.ts';
import {
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

type OutlineKind = Outline['kind'];

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
