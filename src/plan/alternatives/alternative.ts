import type { Plan } from '../schema.ts';

export type AlternativeId = 'thickerFeed' | 'copperClad' | 'secondBattery' | 'otherAmplifier';

/** Another way to build a plan. */
export interface Alternative {
  readonly id: AlternativeId;
  /** null: this plan has no such alternative. */
  readonly plan: Plan | null;
}
