/** Proposing, accepting and refusing: the plan changes with what is accepted, and then in one step of history. */
import { newId } from '../plan/create.ts';
import { withNeeded, withoutPart } from '../plan/propose/proposal.ts';
import type { FittingKind, Plan } from '../plan/schema.ts';
import type { Desk } from './desk.ts';
import { cancelGesture, commit } from './edit.ts';
import { openSheet } from './openSheet.ts';
import { NOTHING_PROPOSED, wholePlan } from './whole.ts';

type NameFitting = (kind: FittingKind, plan: Plan) => string;

const namers = new WeakMap<Desk, NameFitting>();

/** Registers what new fittings are called: words are no business of the desk. Answers how to stop. */
export function nameProposedBy(desk: Desk, name: NameFitting): () => void {
  namers.set(desk, name);
  return () => {
    if (namers.get(desk) === name) namers.delete(desk);
  };
}

/**
 * Lays a likely feed for the open sheet on the desk, in place of one that lies there. What works it out is fetched when
 * it is first asked for. Answers of how many parts it is.
 */
export async function proposeFeed(desk: Desk): Promise<number> {
  const { proposeFeed: propose } = await import('../plan/propose/propose.ts');
  cancelGesture(desk);
  const state = desk.getState();
  const names = { fitting: namers.get(desk) ?? (() => '') };
  const proposal = propose(state.plan, openSheet(state).id, names, newId);
  desk.setState({ proposal, hand: { way: 'move' }, selection: null, findingId: null });
  return proposal.length;
}

/** Makes all that is proposed part of the plan. */
export function acceptAll(desk: Desk): boolean {
  return commit(desk, 'acceptAll', (whole) => whole, { proposal: NOTHING_PROPOSED });
}

/** Makes one part of the plan, with what it needs to stand; the rest stays proposed. */
export function acceptPart(desk: Desk, id: string): boolean {
  const { proposal } = desk.getState();
  const accepted = new Set(withNeeded(proposal, id).map((part) => part.id));
  if (accepted.size === 0) return false;
  return commit(desk, 'accept', (whole) => whole, { proposal: proposal.filter((part) => !accepted.has(part.id)) });
}

/** Puts one part away, with the runs that would end at it. The plan is not touched. */
export function refusePart(desk: Desk, id: string): void {
  layAside(desk, withoutPart(desk.getState().proposal, id));
}

/** Puts all of it away. */
export const refuseAll = (desk: Desk): void => layAside(desk, NOTHING_PROPOSED);

function layAside(desk: Desk, proposal: typeof NOTHING_PROPOSED): void {
  cancelGesture(desk);
  const { plan, selection } = desk.getState();
  const whole = wholePlan({ plan, proposal });
  const holds = [...whole.fittings, ...whole.runs].some(({ id }) => id === selection?.id);
  desk.setState({ proposal, selection: holds ? selection : null });
}
