/**
 * Version 3: vehicles of several bodies with their axles, height and sill, own outlines, sheets that show a part or a side
 * of one, and continuation points between them. A van of before keeps its measures; what it did not tell is what it was
 * drawn with: the front axle at 0.66 of the bay, the rear one 0.95 m from the tail.
 */
import { isJsonObject, type JsonObject, type Step } from './step.ts';

const FRONT_AXLE_OF_BAY = 0.66;
const REAR_AXLE_FROM_TAIL_M = 0.95;
const LEAST_FRONT_AXLE_M = 0.1;
const LEAST_WHEELBASE_M = 0.3;
const STEPS_PER_M = 10_000;

const roundM = (m: number): number => Math.round(m * STEPS_PER_M) / STEPS_PER_M;

function outlineUp(outline: unknown): unknown {
  if (!isJsonObject(outline) || outline.kind !== 'panelVan') return outline;
  const { lengthM, bayM } = outline;
  // anything but numbers is left for the schema to refuse
  if (typeof lengthM !== 'number' || typeof bayM !== 'number') return outline;
  const frontAxleM = Math.max(LEAST_FRONT_AXLE_M, roundM(FRONT_AXLE_OF_BAY * bayM));
  const wheelbaseM = Math.max(LEAST_WHEELBASE_M, roundM(lengthM - REAR_AXLE_FROM_TAIL_M - frontAxleM));
  return { ...outline, kind: 'vehicle', body: 'panelVan', heightM: 1.85, frontAxleM, wheelbaseM, sillM: 0.12 };
}

const sheetUp = (sheet: unknown): unknown =>
  isJsonObject(sheet) ? { ...sheet, outline: outlineUp(sheet.outline), part: 'whole', view: 'above' } : sheet;

export const vehiclesAndSheets: Step = {
  name: 'VehiclesAndSheets',
  to: 3,
  up: (document: JsonObject) => ({
    ...document,
    sheets: Array.isArray(document.sheets) ? document.sheets.map(sheetUp) : document.sheets,
  }),
};
