import { newId, newPlan } from '../../plan/create.ts';
import type { Desk } from '../desk.ts';
import { openOnDesk } from '../edit.ts';

type NewPlan = Omit<Parameters<typeof newPlan>[0], 'id' | 'sheetId'>;

/** Puts a new, empty plan on the desk; the one before stays kept as it was. Has parameters, so no key runs it. */
export function startPlan(desk: Desk, options: NewPlan): void {
  openOnDesk(desk, newPlan({ ...options, id: newId(), sheetId: newId() }), { isExample: false });
}
