/** What every fitting has. */
import * as v from 'valibot';
import { gaugeId, id, name, pointSchema, zone } from '../fields.ts';

export const fittingBase = {
  id,
  name,
  sheetId: id,
  at: pointSchema,
  zone,
  /** The largest conductor that its terminals take (a block's: that of its bus); null when not told. */
  takes: v.nullable(gaugeId),
  locked: v.boolean(),
};
