/** What opens: fuses and breakers by themselves, a relay with the engine, a switch by hand. */
import * as v from 'valibot';
import { bounded, inputOf } from '../fields.ts';
import { linkSchema } from '../links.ts';
import { fittingBase } from './base.ts';

export const fuseSchema = v.strictObject({ ...fittingBase, kind: v.literal('fuse'), link: linkSchema });

/** A thermal breaker: a device like a fuse, that can be closed again. */
export const breakerSchema = v.strictObject({ ...fittingBase, kind: v.literal('breaker'), link: linkSchema });

const contacts = {
  /** A continuous; null when not told. */
  ratedA: v.nullable(bounded(1, 2000)),
  /** Resistance of the closed contacts, ohm. */
  contactOhm: inputOf(bounded(0, 0.1)),
};

/** An isolating relay: open at rest, closed while the engine charges. */
export const relaySchema = v.strictObject({ ...fittingBase, kind: v.literal('relay'), ...contacts });

/** A battery switch, worked by hand. */
export const switchSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('switch'),
  closed: v.boolean(),
  ...contacts,
});
