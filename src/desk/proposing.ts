/** Proposing, accepting and refusing: each is one step of history; the plan changes with what is accepted alone. */
import { newId } from '../plan/create.ts';
import type { ProposedNames } from '../plan/propose/builder.ts';
import { type Proposal, partWhole, withNeeded, withoutPart, withProposal } from '../plan/propose/proposal.ts';
import type { Desk } from './desk.ts';
import { cancelGesture, commit, layProposal } from './edit.ts';
import { openSheet } from './openSheet.ts';
import { NOTHING_PROPOSED } from './whole.ts';

type NameFitting = ProposedNames['fitting'];

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
  const parts = propose(state.plan, openSheet(state).id, names, newId);
  // as the plan would hold them, so that a later step changes no part but the one it is about
  const { proposal } = partWhole(state.plan, withProposal(state.plan, parts), parts);
  if (proposal.length === 0) return 0;
  layProposal(desk, 'propose', proposal, { hand: { way: 'move' }, selection: null, findingId: null });
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

/** Puts one part away, with the runs that would end at it, and says of how many parts it was. The plan is not touched. */
export const refusePart = (desk: Desk, id: string): void =>
  refuse(desk, 'refuse', withoutPart(desk.getState().proposal, id));

/** Puts all of it away. */
export const refuseAll = (desk: Desk): void => refuse(desk, 'refuseAll', NOTHING_PROPOSED);

function refuse(desk: Desk, act: string, left: Proposal): void {
  const count = desk.getState().proposal.length - left.length;
  if (count === 0) return;
  layProposal(desk, act, left, { message: { id: 'refused', params: { count }, undo: true } });
}
