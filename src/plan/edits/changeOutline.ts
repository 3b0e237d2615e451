import type { Outline, Plan, Sheet } from '../schema.ts';
import { changeSheet } from './changeSheet.ts';

/** The sheets that show the same vehicle as that one, itself among them: the same outline, the wheel on the same side. */
export function sheetsOfVehicle({ sheets }: Plan, sheetId: string): Sheet[] {
  const shown = (sheet: Sheet | undefined) => JSON.stringify([sheet?.outline, sheet?.mirrored]);
  const vehicle = shown(sheets.find(({ id }) => id === sheetId));
  return sheets.filter((sheet) => shown(sheet) === vehicle);
}

/** Gives a vehicle another outline on every sheet that shows it, or on none; nothing drawn on them moves. */
export function changeOutline(plan: Plan, sheetId: string, outline: Outline): Plan {
  return sheetsOfVehicle(plan, sheetId).reduce((before, { id }) => changeSheet(before, id, { outline }), plan);
}
