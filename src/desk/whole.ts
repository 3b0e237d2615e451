/** The plan with what is proposed for it: what hand, sketch and answer go by while a proposal lies on the desk. */
import { type Proposal, withProposal } from '../plan/propose/proposal.ts';
import type { Plan } from '../plan/schema.ts';

/** The same list each time, so that nothing is worked out anew for it. */
export const NOTHING_PROPOSED: Proposal = [];

interface Lain {
  readonly plan: Plan;
  readonly proposal?: Proposal;
}

const wholes = new WeakMap<Plan, { readonly proposal: Proposal; readonly whole: Plan }>();

/** The plan as it would be with all that is proposed; the plan itself where nothing is. One object for one pair. */
export function wholePlan({ plan, proposal = NOTHING_PROPOSED }: Lain): Plan {
  if (proposal.length === 0) return plan;
  const known = wholes.get(plan);
  if (known?.proposal === proposal) return known.whole;
  const whole = withProposal(plan, proposal);
  wholes.set(plan, { proposal, whole });
  return whole;
}
