import { wholePlan } from '../../../desk/whole.ts';
import { newId } from '../../../plan/create.ts';
import { newFittingIn } from '../../../plan/newFitting.ts';
import type { FittingKind } from '../../../plan/schema.ts';
import { defaultName } from '../../../words/index.ts';
import type { Carried, HandEvent, HandState, StateNamed } from '../state.ts';
import type { Workbench } from '../workbench.ts';
import { aiming } from './Aiming.ts';

/** A kind has been chosen on the shelf; a press begins to aim. */
export function idle(state: StateNamed<'place.idle'>, event: HandEvent, bench: Workbench): HandState {
  const { hand } = bench.desk.getState();
  if (event.kind !== 'press' || hand.way !== 'place') return state;
  return aiming(beginAiming(hand.fitting, bench, null), event, bench);
}

/** Ids are chosen now, so that the draft and what is committed are the same fitting. */
export function beginAiming(kind: FittingKind, bench: Workbench, carried: Carried | null): StateNamed<'place.aiming'> {
  const plan = wholePlan(bench.desk.getState());
  const name = defaultName(kind, plan);
  const fitting = newFittingIn(plan, kind, { id: newId(), name, sheetId: bench.sheetId, at: { xM: 0, yM: 0 } });
  bench.drafts.begin('place');
  return { name: 'place.aiming', fitting, newRunId: newId(), at: null, splits: null, carried };
}
