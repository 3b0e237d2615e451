/**
 * The one way to change the plan on the desk. A commit is one set and one step of history; a gesture drafts freely
 * and becomes one commit, or nothing.
 */
import { isAlike } from '../plan/alike.ts';
import { newId } from '../plan/create.ts';
import { type Parted, type Proposal, partWhole } from '../plan/propose/proposal.ts';
import type { Plan } from '../plan/schema.ts';
import { type Desk, type DeskState, HAND_STILL, type Message } from './desk.ts';
import { keptSelection } from './selection.ts';
import { NOTHING_PROPOSED, wholePlan } from './whole.ts';

export type Edit = (plan: Plan) => Plan;

/** What may change in the same set as a commit, beside the plan. */
export type Aftermath = Partial<
  Pick<DeskState, 'selection' | 'hand' | 'message' | 'sheetId' | 'findingId' | 'proposal'>
>;

/**
 * Changes the plan, or what is proposed for it, by a pure edit, as one step of history. A gesture under way is dropped
 * first. An edit that answers the same plan changes nothing: no step, redo kept. Answers whether anything changed.
 */
export function commit(desk: Desk, act: string, edit: Edit, aftermath: Aftermath = {}): boolean {
  cancelGesture(desk);
  return settle(desk, act, edit(wholePlan(desk.getState())), aftermath);
}

/** Lays another proposal beside the plan, or none: one step of history, in which the plan stays as it is. */
export function layProposal(desk: Desk, act: string, proposal: Proposal, aftermath: Aftermath = {}): void {
  cancelGesture(desk);
  step(desk, act, { plan: desk.getState().plan, proposal }, aftermath);
}

/** Starts a gesture that would be `act`; one under way is dropped. The plan stays as it is until the commit. */
export function beginGesture(desk: Desk, act: string): void {
  desk.setState({ ...HAND_STILL, gesture: act });
}

/**
 * Shows the plan as the edit would leave it, always from the plan as it was when the gesture began.
 * Answers false when no gesture is under way: an undo or another act has dropped it, and the hand is to stop.
 */
export function draftGesture(desk: Desk, edit: Edit): boolean {
  const state = desk.getState();
  if (state.gesture === null) return false;
  const draft = edit(wholePlan(state));
  // a finger that snaps to where it was has moved nothing: what is known of the draft stays known
  if (state.draft === null || !isAlike(state.draft, draft)) desk.setState({ draft });
  return true;
}

/** Makes the draft the plan: exactly one step of history, or none when nothing changed. Answers whether it did. */
export function commitGesture(desk: Desk, aftermath: Aftermath = {}): boolean {
  const { gesture, draft, ...state } = desk.getState();
  if (gesture === null) return false;
  if (draft !== null && draft !== wholePlan(state)) return settle(desk, gesture, draft, aftermath);
  cancelGesture(desk);
  return false;
}

/** Drops the draft; the plan was never touched. */
export function cancelGesture(desk: Desk): void {
  const { gesture, draft, selection, ...state } = desk.getState();
  if (gesture === null && draft === null) return;
  desk.setState({ ...HAND_STILL, selection: keptSelection(wholePlan(state), selection) });
}

/** One step back. A gesture under way is dropped first; a selection of what is then gone goes too. */
export function undo(desk: Desk): void {
  stepTo(desk, desk.temporal.getState().pastStates.at(-1), () => desk.temporal.getState().undo());
}

/** One step forward again. */
export function redo(desk: Desk): void {
  stepTo(desk, desk.temporal.getState().futureStates.at(-1), () => desk.temporal.getState().redo());
}

export const undoDepth = (desk: Desk): number => desk.temporal.getState().pastStates.length;
export const redoDepth = (desk: Desk): number => desk.temporal.getState().futureStates.length;

/** Puts another plan on the desk, with an empty history, nothing selected and the cameras to be fitted anew. */
export function openOnDesk(desk: Desk, plan: Plan, options: { isExample: boolean; proposal?: Proposal }): void {
  untracked(desk, {
    plan,
    proposal: options.proposal ?? NOTHING_PROPOSED,
    act: null,
    ...HAND_STILL,
    selection: null,
    sheetId: null,
    outlineOf: null,
    findingId: null,
    hand: { way: 'move' },
    cameras: { whole: null, bay: null },
    message: null,
    isExample: options.isExample,
  });
  desk.temporal.getState().clear();
}

function settle(desk: Desk, act: string, edited: Plan, aftermath: Aftermath): boolean {
  const state = desk.getState();
  if (edited === wholePlan(state) && aftermath.proposal === undefined) return false;
  step(desk, act, partWhole(state.plan, edited, aftermath.proposal ?? state.proposal), aftermath);
  return true;
}

function step(desk: Desk, act: string, { plan, proposal }: Parted, aftermath: Aftermath): void {
  const { isExample, selection, message } = desk.getState();
  const kept = aftermath.selection === undefined ? selection : aftermath.selection;
  const next = isExample ? { ...plan, id: becomeCopy(desk) } : plan;
  const copied: Message = { id: 'exampleCopied', params: { name: next.name }, undo: false };
  desk.setState({
    // whatever is said already weighs more
    message: isExample ? (message ?? copied) : lasting(message),
    ...aftermath,
    ...HAND_STILL,
    plan: next,
    proposal,
    act,
    selection: keptSelection(wholePlan({ plan: next, proposal }), kept),
    isExample: false,
  });
}

/** An offer to take an act back ends with the next act: undo would take back another one. */
const lasting = (message: Message | null): Message | null => (message?.undo === true ? null : message);

/**
 * Gives the shipped example an id of the user's own before its first change, outside the history: undo then leads
 * back to the untouched copy, never to the example itself. Answers the new id.
 */
function becomeCopy(desk: Desk): string {
  const id = newId();
  untracked(desk, { plan: { ...desk.getState().plan, id } });
  return id;
}

function stepTo(desk: Desk, target: Partial<DeskState> | undefined, step: () => void): void {
  cancelGesture(desk);
  if (target?.plan === undefined) return;
  const { plan, proposal } = target;
  const { selection, message } = desk.getState();
  // before the step, so that nobody ever sees a plan with a selection of what it does not hold
  const kept = keptSelection(wholePlan({ plan, ...(proposal && { proposal }) }), selection);
  desk.setState({ selection: kept, message: lasting(message) });
  step();
}

function untracked(desk: Desk, change: Partial<DeskState>): void {
  const history = desk.temporal.getState();
  history.pause();
  desk.setState(change);
  history.resume();
}
