/**
 * The one way to change the plan on the desk. A commit is one set and one step of history; a gesture drafts freely
 * and becomes one commit, or nothing.
 */
import { isAlike } from '../plan/change.ts';
import { newId } from '../plan/create.ts';
import { partWhole, stillOpen } from '../plan/propose/proposal.ts';
import type { Plan } from '../plan/schema.ts';
import { type Desk, type DeskState, HAND_STILL, type Message } from './desk.ts';
import { keptSelection } from './selection.ts';
import { NOTHING_PROPOSED, wholePlan } from './whole.ts';

export type Edit = (plan: Plan) => Plan;

/** What may change in the same set as a commit, beside the plan. */
export type Aftermath = Partial<Pick<DeskState, 'selection' | 'hand' | 'message' | 'sheetId' | 'proposal'>>;

/**
 * Changes the plan by a pure edit, as one step of history. A gesture under way is dropped first.
 * An edit that answers the same plan changes nothing: no step, redo kept. One that changes only what is proposed is no
 * step either. Answers whether anything changed.
 */
export function commit(desk: Desk, act: string, edit: Edit, aftermath: Aftermath = {}): boolean {
  cancelGesture(desk);
  return settle(desk, act, edit(wholePlan(desk.getState())), aftermath);
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
  stepTo(desk, desk.temporal.getState().pastStates.at(-1)?.plan, () => desk.temporal.getState().undo());
}

/** One step forward again. */
export function redo(desk: Desk): void {
  stepTo(desk, desk.temporal.getState().futureStates.at(-1)?.plan, () => desk.temporal.getState().redo());
}

export const undoDepth = (desk: Desk): number => desk.temporal.getState().pastStates.length;
export const redoDepth = (desk: Desk): number => desk.temporal.getState().futureStates.length;

/** Puts another plan on the desk, with an empty history, nothing selected and the cameras to be fitted anew. */
export function openOnDesk(desk: Desk, plan: Plan, options: { isExample: boolean }): void {
  untracked(desk, {
    plan,
    act: null,
    ...HAND_STILL,
    selection: null,
    sheetId: null,
    outlineOf: null,
    proposal: NOTHING_PROPOSED,
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
  const { isExample, selection, message } = state;
  if (edited === wholePlan(state) && aftermath.proposal === undefined) return false;
  const left = partWhole(state.plan, edited, aftermath.proposal ?? state.proposal);
  const kept = aftermath.selection === undefined ? selection : aftermath.selection;
  if (left.plan === state.plan) {
    // only what is proposed has changed: no step of history, and nothing to take back
    const { proposal } = left;
    const whole = wholePlan(left);
    desk.setState({ ...aftermath, ...HAND_STILL, message, proposal, selection: keptSelection(whole, kept) });
    return true;
  }
  const next = isExample ? { ...left.plan, id: becomeCopy(desk) } : left.plan;
  const copied: Message = { id: 'exampleCopied', params: { name: next.name }, undo: false };
  desk.setState({
    // whatever is said already weighs more
    message: isExample ? (message ?? copied) : lasting(message),
    ...aftermath,
    ...HAND_STILL,
    plan: next,
    proposal: left.proposal,
    act,
    selection: keptSelection(wholePlan({ plan: next, proposal: left.proposal }), kept),
    isExample: false,
  });
  return true;
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

function stepTo(desk: Desk, target: Plan | undefined, step: () => void): void {
  cancelGesture(desk);
  if (target === undefined) return;
  const { selection, message, ...before } = desk.getState();
  const proposal = stillOpen(target, before.proposal);
  const whole = wholePlan({ plan: target, proposal });
  // before the step, so that nobody ever sees a plan with a selection of what it does not hold
  desk.setState({ proposal, selection: keptSelection(whole, selection), message: lasting(message) });
  step();
}

function untracked(desk: Desk, change: Partial<DeskState>): void {
  const history = desk.temporal.getState();
  history.pause();
  desk.setState(change);
  history.resume();
}
