/** Where cables meet, change or pass: pass-throughs, blocks, buses, reducers, ground points. */
import * as v from 'valibot';
import { bounded, gaugeId, id, inputOf, matching, pointSchema, someOf } from '../fields.ts';
import { linkSchema } from '../links.ts';
import { fittingBase } from './base.ts';

export const passThroughSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('passThrough'),
  /** Inside diameter of its grommet, not that of the hole it sits in, mm; null when not told. */
  grommetInsideMm: v.nullable(bounded(1, 200)),
});

/** One point of a cable that is drawn on two sheets: where it leaves one, it goes on on the other. It cuts nothing. */
export const continuationSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('continuation'),
  /** Where the same point is on the other sheet. */
  other: v.strictObject({ sheetId: id, at: pointSchema }),
});

/** A terminal beside 'bus': straight onto the bus (link null) or through a link of its own. */
const outputSchema = v.strictObject({
  terminal: matching(/^out[1-9][0-9]?$/, 'badTerminal'),
  link: v.nullable(linkSchema),
});

export const blockSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('block'),
  outputs: someOf(outputSchema, 24),
  /** The largest conductor that an output takes; null when not told. */
  outputsTake: v.nullable(gaugeId),
});

/** A bar of studs: everything on it is one terminal. For feeds or for grounds. */
export const busSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('bus'),
  /** Its rating, A continuous; null when not told. */
  ratedA: v.nullable(bounded(1, 2000)),
});

/** A pigtail or an adapter from a thick cable to a thin one. */
export const reducerSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('reducer'),
  /** Length of its thin end, m. */
  lengthM: inputOf(bounded(0, 1)),
});

export const groundSchema = v.strictObject({ ...fittingBase, kind: v.literal('ground') });
