import { newFitting } from '../newFitting.ts';
import type { FittingOf, Plan } from '../schema.ts';
import { addFitting } from './addFitting.ts';

type OnSheet = FittingOf<'continuation'>['other'];

/** One point of a cable, where it leaves a sheet and where it goes on on another. */
export interface NewContinuation {
  readonly id: string;
  readonly name: string;
  readonly from: OnSheet;
  readonly to: OnSheet;
}

/** Adds a point at which a cable goes on on another sheet; refused where both places are on the same one. */
export function addContinuation(plan: Plan, { id, name, from, to }: NewContinuation): Plan {
  return addFitting(plan, { ...newFitting('continuation', { id, name, ...from }), other: to });
}
