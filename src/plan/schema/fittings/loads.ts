/** What draws current: amplifiers, and anything else on the feed. */
import * as v from 'valibot';
import { bounded, inputOf, listOf } from '../fields.ts';
import { fittingBase } from './base.ts';

export const amplifierSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('amplifier'),
  /** Rated output at the load actually wired, all channels together; null when not told. */
  ratedW: v.nullable(inputOf(bounded(1, 50_000))),
  /** The load wired, per channel; null when not told. */
  loadOhm: v.nullable(bounded(0.1, 64)),
  ampClass: v.picklist(['D', 'AB']),
  efficiency: inputOf(bounded(0.05, 0.99)),
  /** Regulated supply: constant power. Otherwise current in proportion to voltage. */
  regulated: inputOf(v.boolean()),
  /** Ratings of the fuses on the amplifier itself; [] = it has none; null = not told. */
  onboardFusesA: v.nullable(listOf(bounded(0.5, 500), 12)),
  /** The amplifier maker's largest external fuse; null when not told. */
  externalFuseMaxA: v.nullable(bounded(0.5, 1000)),
  /** 'two': a second pair of supply and ground terminals, joined to the first inside. */
  supplyInputs: v.picklist(['one', 'two']),
  /** What it draws on and silent, A. */
  idleA: inputOf(bounded(0, 50)),
  /** Mean over peak power of what it plays, where that is not the plan's own; null: as the settings say. */
  duty: v.nullable(bounded(0.01, 1)),
});

/** Lights, a compressor, an inverter; by its greatest steady current. */
export const loadSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('load'),
  currentA: inputOf(bounded(0.01, 1000)),
});
