/** A sheet with the outline that is drawn on, and what lies on it beside fittings and runs. */
import * as v from 'valibot';
import { bounded, id, inputOf, MAX_BENDS, name, pointSchema, zone } from './fields.ts';

export const outlineSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('panelVan'),
    lengthM: bounded(2, 12),
    widthM: bounded(1, 3),
    /** Nose to firewall. */
    bayM: bounded(0.3, 3),
    /** Firewall to the partition behind the seats. */
    cabM: bounded(0.5, 4),
  }),
  v.strictObject({ kind: v.literal('bench'), lengthM: bounded(0.5, 12), widthM: bounded(0.3, 5) }),
]);

export const sheetSchema = v.strictObject({
  id,
  name,
  outline: outlineSchema,
  /** True metres per metre of the sheet: 1 for an outline with real sizes. */
  scale: inputOf(bounded(0.01, 100)),
  /** Right-hand drive. */
  mirrored: v.boolean(),
});

/** Room for what later versions of the page fill: marked surroundings, tie points, bracket mounts, pictures. */
export const areaSchema = v.strictObject({
  id,
  name,
  sheetId: id,
  zone,
  outline: v.pipe(v.array(pointSchema), v.minLength(3), v.maxLength(MAX_BENDS)),
});
export const tieSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema });
export const mountSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema });
export const pictureSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema, widthM: bounded(0.01, 100) });
