/**
 * What lies on the desk: the open plan with its history, the draft of a gesture under way, what is selected, what
 * the hand does, where the cameras look. The only writer of the plan.
 */
import { temporal } from 'zundo';
import { createStore } from 'zustand/vanilla';
import type { Proposal } from '../plan/propose/proposal.ts';
import type { FittingKind, Plan } from '../plan/schema.ts';
import { NOTHING_PROPOSED, wholePlan } from './whole.ts';

/** What is picked out: a fitting, a run, one bend of a run. */
export type Selection =
  | { kind: 'fitting'; id: string }
  | { kind: 'run'; id: string }
  | { kind: 'bend'; id: string; index: number };

/** The three ways of the hand; always visible which. */
export type Hand = { way: 'move' } | { way: 'run' } | { way: 'place'; fitting: FittingKind };

export type PaneId = 'whole' | 'bay';

/** A camera maps sheet metres to css pixels of its pane: px = (m - centre) * pxPerM + pane centre. */
export interface Camera {
  sheetId: string;
  centreXM: number;
  centreYM: number;
  pxPerM: number;
}

/** What a message can say; params beside each. Text comes from src/words by id. */
export type MessageId =
  /** name, or `of` */
  | 'removed'
  /** `of`, size ('auto' or a gauge): the cables at a deleted fitting were unlike, and are one of that size now */
  | 'joined'
  /** name: the shipped example became a plan of the user's own */
  | 'exampleCopied'
  /** The plan is not kept in this browser; the page works on. */
  | 'notKept'
  /** The browser's room for pages is full. */
  | 'storageFull'
  /** Another tab changed this plan; what is done here is kept as a plan of its own. */
  | 'otherTab'
  /** time (ms since 1970): the newest saved state was damaged, an older one is open */
  | 'olderOpened'
  /** The saved plan was damaged beyond its revisions; the example is open. */
  | 'savedDamaged'
  /** The example could not be loaded; an empty plan is open. */
  | 'exampleMissing'
  /** What takes hold of things on the sketch could not be fetched; it is tried again with the next touch. */
  | 'handMissing'
  /** code, where, and the reason's own params: a file was not opened, the open plan is as it was */
  | 'fileRefused'
  /** name: a plan that the browser kept */
  | 'planDeleted'
  /** An outline was drawn, and the other sheets of the vehicle followed. */
  | 'sheetsFollowed'
  /** count: parts of a proposal that were put away together */
  | 'refused'
  /** name */
  | 'fileOpened'
  /** name */
  | 'fileSaved'
  /** name, count: a file holds the plan, and not what is only proposed for it */
  | 'fileSavedWithout';

/** A short message at the foot of the page; `undo` offers to take the act back. */
export interface Message {
  id: MessageId;
  params: Readonly<Record<string, string | number>>;
  undo: boolean;
  /** Instead of a name: the fitting or run that it speaks of, and the plan that holds it. It is called as it is shown. */
  of?: { plan: Plan; id: string };
  /** The way back from an act that is no step of the plan's history. */
  takeBack?: () => void;
}

/** The tracked part: the plan, what is proposed for it, and the act that made it so. */
interface Tracked {
  plan: Plan;
  /** Fittings and runs that are proposed and no part of the plan until they are accepted; empty when none are. */
  proposal: Proposal;
  act: string | null;
}

export interface DeskState extends Tracked {
  /** The plan as the gesture under way would leave it; null when the hand is still. */
  draft: Plan | null;
  /** The draft whose answer is shown, where drafts are answered beside the page (`Answering`); null where the draft's own is. */
  answered: Plan | null;
  /** The last of those whose answer is known in full, tables too; null like `answered`. */
  inFull: Plan | null;
  /** What is shown of the answer is old: the draft has long been another. */
  isBehind: boolean;
  /** The act that the gesture under way would be; null when the hand is still. */
  gesture: string | null;
  selection: Selection | null;
  /** The sheet that is open; the first where this is none of the plan's (see `openSheet`). */
  sheetId: string | null;
  /** The sheet whose outline is being drawn; null when none is. */
  outlineOf: string | null;
  /** The finding looked at; its places are marked on the sketch. */
  findingId: string | null;
  hand: Hand;
  /** null until the pane has been measured: then the camera fits its sheet (or the bay). */
  cameras: Record<PaneId, Camera | null>;
  /** The pane last worked in: keys zoom it; where only one pane has room it is the one shown. */
  pane: PaneId;
  snap: boolean;
  bigFingers: boolean;
  message: Message | null;
  /** The plan on the desk is the shipped example: the first edit makes a copy. */
  isExample: boolean;
}

/** No gesture is under way. */
export const HAND_STILL = { draft: null, answered: null, inFull: null, isBehind: false, gesture: null } as const;

export const HISTORY_LIMIT = 500;

export function createDesk(plan: Plan, options: { isExample: boolean; bigFingers: boolean; proposal?: Proposal }) {
  return createStore<DeskState>()(
    temporal(
      (): DeskState => ({
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
        pane: 'whole',
        snap: true,
        bigFingers: options.bigFingers,
        message: null,
        isExample: options.isExample,
      }),
      {
        partialize: ({ plan, proposal, act }): Tracked => ({ plan, proposal, act }),
        equality: (past, current) => past.plan === current.plan && past.proposal === current.proposal,
        limit: HISTORY_LIMIT,
      },
    ),
  );
}

export type Desk = ReturnType<typeof createDesk>;

/** The plan to show: the draft while a gesture is under way, else the plan with what is proposed. */
export const shownPlan = (state: Pick<DeskState, 'plan' | 'draft'> & Partial<Pick<DeskState, 'proposal'>>): Plan =>
  state.draft ?? wholePlan(state);

/** The plan to answer for: the one shown, or where its answer is still being worked out, the one before. */
export const answeredPlan = (state: Pick<DeskState, 'plan' | 'draft' | 'answered' | 'proposal'>): Plan =>
  state.draft === null ? wholePlan(state) : (state.answered ?? state.draft);

/** The newest plan whose answer can be read in full without being worked out for it. */
export const inFullPlan = (state: Pick<DeskState, 'plan' | 'draft' | 'inFull' | 'proposal'>): Plan =>
  state.draft === null ? wholePlan(state) : (state.inFull ?? state.draft);
