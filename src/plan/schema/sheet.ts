/** A sheet with the outline that is drawn on, and what lies on it beside fittings and runs. */
import * as v from 'valibot';
import { bounded, id, inputOf, MAX_BENDS, name, pointSchema, zone } from './fields.ts';

/** The shapes that the page can draw by their measures. */
const body = v.picklist(['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus']);

export const outlineSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('vehicle'),
    body,
    lengthM: bounded(2, 12),
    widthM: bounded(1, 3),
    heightM: bounded(0.5, 4),
    /** Nose to the front axle. */
    frontAxleM: bounded(0.1, 4),
    wheelbaseM: bounded(0.3, 10),
    /** Nose to firewall. */
    bayM: bounded(0.3, 3),
    /** Firewall to the end of the cabin: a partition, the rear seat's back, a cab's rear wall. What is behind is cargo. */
    cabM: bounded(0.5, 8),
    /** Width of the sill along either side, where cables to the rear lie. */
    sillM: bounded(0.02, 0.5),
  }),
  /** Drawn by the user. */
  v.strictObject({
    kind: v.literal('own'),
    lengthM: bounded(0.5, 12),
    widthM: bounded(0.3, 5),
    heightM: bounded(0.3, 4),
    /** Its edge, seen from above, as a closed polygon. */
    edge: v.pipe(v.array(pointSchema), v.minLength(3), v.maxLength(MAX_BENDS)),
    /** Nose to firewall; null when it has none: then all of it is cabin. */
    bayM: v.nullable(bounded(0.1, 11)),
    /** From there to where the cargo begins; null when none does. */
    cabM: v.nullable(bounded(0.1, 11)),
  }),
  v.strictObject({ kind: v.literal('bench'), lengthM: bounded(0.5, 12), widthM: bounded(0.3, 5) }),
]);

export const sheetSchema = v.strictObject({
  id,
  name,
  outline: outlineSchema,
  /** Which part of the outline it shows, in the outline's own coordinates. */
  part: v.picklist(['whole', 'bay', 'cargo']),
  /** From the side, y counts down from the roof. */
  view: v.picklist(['above', 'side']),
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
