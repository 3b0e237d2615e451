/** New fittings, with the defaults of the project's rules; each assumed value names its source. */
import { assumed } from './assumed.ts';
import { assumedVolts } from './create.ts';
import { roundPoint } from './round.ts';
import type { Fitting, FittingKind, FittingOf, Input, Link, Outline, Plan, Point } from './schema.ts';

type AmpClass = FittingOf<'amplifier'>['ampClass'];
type OutlineKind = Outline['kind'];

/** Output over input at full sine, supply included. Source: common practice, from memory. */
const EFFICIENCY: Record<AmpClass, number> = { D: 0.8, AB: 0.55 };

/** The efficiency taken for an amplifier of that class until told otherwise. */
export const assumedEfficiency = (ampClass: AmpClass): Input<number> => assumed(EFFICIENCY[ampClass], 'commonPractice');

/** A fuse-link whose rating and family the answer chooses. */
export const autoLink = (): Link => ({ ratingA: 'auto', family: 'auto' });

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
