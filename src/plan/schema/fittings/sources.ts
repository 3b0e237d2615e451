/** What feeds: batteries, where the factory's feed is tapped, the alternator, a DC-DC charger, a capacitor. */
import * as v from 'valibot';
import { bounded, inputOf } from '../fields.ts';
import { linkSchema } from '../links.ts';
import { fittingBase } from './base.ts';

export const batterySchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('battery'),
  chemistry: v.picklist(['leadAcid', 'lithium', 'supercapacitor']),
  /** Cold cranking amperes as on the label. */
  ccaA: inputOf(bounded(10, 5000)),
  /** What the label counts them by: SAE J537, EN 50342-1, DIN 43539-2, IEC 60095-1; 'ca': at 0 degC. */
  ccaStandard: v.picklist(['sae', 'en', 'din', 'iec', 'ca']),
  capacityAh: inputOf(bounded(0.01, 2000)),
  /** Internal resistance, as measured or by its maker; null: estimated from the cranking amperes or the chemistry. */
  internalOhm: v.nullable(inputOf(bounded(0.00001, 1))),
  /** A fuse-link that sits on the positive post itself: every cable leaves through it. */
  postLink: v.nullable(linkSchema),
  /** The negative post carries the vehicle's battery sensor; null when not told. */
  sensedNegative: v.nullable(v.boolean()),
  /** The vehicle's own cable from the negative post to the body; null where there is none (a second battery, a bench). */
  strap: v.nullable(v.strictObject({ lengthM: inputOf(bounded(0.01, 20)), areaMm2: inputOf(bounded(0.5, 500)) })),
});

export const alternatorSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('alternator'),
  /** Output at 6,000 a minute, cold: what is on the plate (ISO 8854: IR). */
  ratedA: inputOf(bounded(1, 1000)),
  /** Output at 1,500 a minute, cold (ISO 8854: IL); null when not told: a share of the rated one. */
  idleA: v.nullable(inputOf(bounded(0, 1000))),
  /** Hot output over cold. */
  hotShare: inputOf(bounded(0.3, 1)),
  /** What the vehicle itself draws with the engine running. */
  vehicleA: inputOf(bounded(0, 500)),
});

/** A source whose battery stands elsewhere. CCA as SAE J537 counts them. */
const remoteSource = {
  ccaA: inputOf(bounded(10, 5000)),
  capacityAh: inputOf(bounded(0.01, 2000)),
  /** What the factory has laid between that battery and the place where the feed takes off. */
  cable: v.strictObject({ lengthM: inputOf(bounded(0, 20)), areaMm2: inputOf(bounded(0.5, 500)) }),
};

export const jumpPostSchema = v.strictObject({ ...fittingBase, kind: v.literal('jumpPost'), ...remoteSource });

/** A stud behind a factory fuse. */
export const takeOffSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('takeOff'),
  ...remoteSource,
  /** Rating of the factory fuse ahead of it; null when not told: then nothing is taken to protect what leaves it. */
  fuseA: v.nullable(bounded(0.5, 1000)),
  /** What the vehicle itself draws through that fuse, A. */
  usedA: inputOf(bounded(0, 1000)),
});

/** A DC-DC charger: takes from one battery, fills another, and limits its output current. */
export const chargerSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('charger'),
  outputV: inputOf(bounded(5, 60)),
  outputMaxA: inputOf(bounded(0.5, 300)),
  efficiency: inputOf(bounded(0.3, 0.99)),
});

export const capacitorSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('capacitor'),
  capacitanceF: inputOf(bounded(0.001, 10_000)),
  /** Equivalent series resistance, ohm. */
  esrOhm: inputOf(bounded(0.00001, 1)),
  /** It will be filled through a resistor before it is joined. */
  precharged: v.boolean(),
});
