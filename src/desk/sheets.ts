/** Sheets of one vehicle: adding, deleting, and a cable that goes on from one to another. */
import { newId, newSheet } from '../plan/create.ts';
import { addSheet } from '../plan/edits/addSheet.ts';
import { continueRun } from '../plan/edits/continueRun.ts';
import { removeSheet } from '../plan/edits/removeSheet.ts';
import type { Plan, Point, Sheet, TerminalRef } from '../plan/schema.ts';
import { runKindBetween } from './connect.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';
import { openSheet } from './openSheet.ts';

/** Opens a sheet; what is selected stays selected, seen or not. */
export function goToSheet(desk: Desk, sheetId: string): void {
  desk.setState({ sheetId });
}

/** Adds a sheet of the open sheet's vehicle and opens it. Answers its id, or null where the plan is full. */
export function addSheetOf(desk: Desk, shows: Pick<Sheet, 'part' | 'view' | 'name'>): string | null {
  const { outline, mirrored } = openSheet(desk.getState());
  const sheet = newSheet({ ...shows, id: newId(), outline, mirrored });
  const isDone = commit(desk, 'addSheet', (before) => addSheet(before, sheet), { sheetId: sheet.id, selection: null });
  return isDone ? sheet.id : null;
}

/** Deletes a sheet with all that is on it, at once; a short message offers to take it back. Answers whether it went. */
export function removeSheetOf(desk: Desk, sheetId: string, name: string): boolean {
  return commit(desk, 'removeSheet', (before) => removeSheet(before, sheetId), {
    message: { id: 'removed', params: { name }, undo: true },
  });
}

/** Where a place of one sheet is looked for on another: as far from the nose; as far across only where both tell that. */
function placeAcross(from: Sheet, to: Sheet, { xM, yM }: Point): Point {
  if (from.view === to.view) return { xM, yM };
  const { outline } = to;
  const acrossM = to.view === 'side' && outline.kind !== 'bench' ? outline.heightM : outline.widthM;
  return { xM, yM: acrossM / 2 };
}

/** A run that is being drawn, as far as it has come. */
export interface Begun {
  readonly sheetId: string;
  readonly from: TerminalRef;
  readonly bends: readonly Point[];
}

/**
 * Ends a run that is being drawn at its last bend, in a point at which it goes on on another sheet, and opens that sheet:
 * one step of history. Answers the point's id; null where there is no bend yet, or the plan will not have it.
 */
export function continueOn(desk: Desk, begun: Begun, sheetId: string, name: string): string | null {
  const { plan } = desk.getState();
  const at = begun.bends.at(-1);
  const [here, there] = [begun.sheetId, sheetId].map((id) => plan.sheets.find((sheet) => sheet.id === id));
  if (at === undefined || here === undefined || there === undefined) return null;
  const id = newId();
  const point = { id, name, from: { sheetId: here.id, at }, to: { sheetId, at: placeAcross(here, there, at) } };
  const run = {
    id: newId(),
    name: '',
    kind: kindOf(plan, begun.from, id),
    from: begun.from,
    bends: begun.bends.slice(0, -1),
  };
  const isDone = commit(desk, 'continue', (before) => continueRun(before, run, point), { sheetId, selection: null });
  return isDone ? id : null;
}

/** The point has no side of its own yet: the run is of the kind of what it comes from. */
const kindOf = (plan: Plan, from: TerminalRef, pointId: string) =>
  runKindBetween(plan, from, { fittingId: pointId, terminal: 'through' });
