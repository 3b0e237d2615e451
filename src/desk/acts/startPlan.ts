import { newId, newPlan } from '../../plan/create.ts';
import type { FittingKind, Plan } from '../../plan/schema.ts';
import { type UsualStart, withUsualStart } from '../../plan/usualStart.ts';
import type { Desk } from '../desk.ts';
import { openOnDesk } from '../edit.ts';

type NewPlan = Omit<Parameters<typeof newPlan>[0], 'id' | 'sheetId'>;

/** What is placed on the new plan at once, and what it is called. */
interface Start extends UsualStart {
  readonly nameOf: (kind: FittingKind, plan: Plan) => string;
}

/** Puts a new plan on the desk, empty unless told otherwise; the one before stays kept. Has parameters, so no key runs it. */
export function startPlan(desk: Desk, options: NewPlan, start?: Start): void {
  const empty = newPlan({ ...options, id: newId(), sheetId: newId() });
  const plan = start === undefined ? empty : withUsualStart(empty, start, start.nameOf, newId);
  openOnDesk(desk, plan, { isExample: false });
}
