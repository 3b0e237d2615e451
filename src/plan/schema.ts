/**
 * The saved plan, version 4. This schema is the single definition of the document: types, JSON Schema, key order
 * and bounds are all derived from it. Lengths are metres in the plane of the sheet, rounded to 0.1 mm by the edits.
 * Its parts stand in `schema/`; what the rest of the page needs of them comes from here.
 */
import * as v from 'valibot';
import { id, listOf, name, type pointSchema } from './schema/fields.ts';
import { fittingSchema } from './schema/fittings/fitting.ts';
import { runSchema } from './schema/run.ts';
import { settingsSchema } from './schema/settings.ts';
import { areaSchema, mountSchema, pictureSchema, sheetSchema, tieSchema } from './schema/sheet.ts';

export { MAX_BENDS, MAX_ITEMS, MAX_NAME, pointSchema, TEXT_CODES } from './schema/fields.ts';
export { conductorSchema, terminalRefSchema } from './schema/run.ts';
export { outlineSchema } from './schema/sheet.ts';
export { fittingSchema, runSchema, settingsSchema, sheetSchema };

export const PLAN_FORMAT = 'feedrun-plan';
export const PLAN_VERSION = 4;
export const MAX_SHEETS = 50;

export const planSchema = v.strictObject({
  format: v.literal(PLAN_FORMAT),
  version: v.literal(PLAN_VERSION),
  id,
  name,
  settings: settingsSchema,
  sheets: v.pipe(listOf(sheetSchema, MAX_SHEETS), v.minLength(1)),
  fittings: listOf(fittingSchema),
  runs: listOf(runSchema),
  areas: listOf(areaSchema),
  ties: listOf(tieSchema),
  mounts: listOf(mountSchema),
  pictures: listOf(pictureSchema),
});

export type Plan = v.InferOutput<typeof planSchema>;
export type Settings = Plan['settings'];
export type Sheet = Plan['sheets'][number];
export type Outline = Sheet['outline'];
export type OutlineOf<K extends Outline['kind']> = Extract<Outline, { kind: K }>;
export type Body = OutlineOf<'vehicle'>['body'];
export type Fitting = Plan['fittings'][number];
export type FittingKind = Fitting['kind'];
export type FittingOf<K extends FittingKind> = Extract<Fitting, { kind: K }>;
export type Run = Plan['runs'][number];
export type RunKind = Run['kind'];
export type Conductor = Run['conductor'];
export type Zone = Run['zone'];
export type Link = FittingOf<'fuse'>['link'];
export type LinkFamily = Settings['linkFamilies'][number];
export type OwnLink = Settings['ownLinks'][number];
export type TerminalRef = Run['from'];
export type Point = v.InferOutput<typeof pointSchema>;
/** A value that may be assumed. */
export interface Input<T> {
  value: T;
  origin: 'assumed' | 'told' | 'measured';
  source?: string;
}
