/** Keeping plans: in this browser as they change, and as files. The page asks here, and the desk tells what came of it. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Desk, Message } from '../desk/desk.ts';
import { openOnDesk } from '../desk/edit.ts';
import { loadPart } from '../desk/latePart.ts';
import { NOTHING_PROPOSED } from '../desk/whole.ts';
import type { Proposal } from '../plan/propose/proposal.ts';
import type { Autosave, SaveState } from '../storage/autosave.ts';
import { openPlanFile, savePlanFile } from '../storage/file.ts';
import { type ReadPlan, readPlan } from '../storage/read.ts';
import type { Store } from '../storage/store.ts';
import { type KeptPlans, keptPlansIn, NO_KEPT_PLANS } from './keptPlans.ts';
import { NO_TEMPLATES, type Templates, templatesIn } from './templates.ts';

export interface Keeping {
  /** Whether what is on the desk is kept: for a small sign on the page. */
  saveState: StoreApi<SaveState>;
  /** Hands the open plan to the browser as a file. */
  saveFile(): void;
  /** Opens a picked or dropped file. A bad one leaves the open plan as it is, and says why. */
  openFile(file: File): Promise<void>;
  /** Plans kept in this browser. */
  plans: KeptPlans;
  /** Outlines kept as templates. */
  templates: Templates;
  /** The id under which the plan on the desk is kept, which is another than its own where two tabs have changed one plan. */
  openId(): string;
  /** Opens a kept plan; the one on the desk stays kept as it is. */
  openKept(planId: string): Promise<void>;
}

export const newSaveState = (): StoreApi<SaveState> => createStore<SaveState>(() => ({ kind: 'idle' }));

/** Writes every committed plan, and what is proposed for it. The example is nobody's until it is changed, and a draft is not a change. */
export function keepChanges(desk: Desk, autosave: Autosave): void {
  desk.subscribe((state, before) => {
    const isChanged = state.plan !== before.plan || state.proposal !== before.proposal;
    if (isChanged && !state.isExample) autosave.keep(state.plan, state.proposal);
  });
}

/** What was proposed for a plan that was read back, as far as it still fits; what holds it against the plan is seldom needed. */
export async function proposalOf({ proposal, plan }: ReadPlan): Promise<Proposal> {
  if (proposal === '') return NOTHING_PROPOSED;
  try {
    return (await loadPart(() => import('../plan/propose/kept.ts'))).readProposal(proposal, plan);
  } catch {
    return NOTHING_PROPOSED;
  }
}

/** Puts a plan that was read back on the desk; says so when it is not its newest state. */
async function openRead(desk: Desk, read: ReadPlan, autosave: Autosave | null): Promise<void> {
  const proposal = await proposalOf(read);
  autosave?.adopt(read);
  openOnDesk(desk, read.plan, { isExample: false, proposal });
  if (read.isOlder) say(desk, { id: 'olderOpened', params: { time: read.time } });
}

export function say(desk: Desk, message: Omit<Message, 'undo'>): void {
  desk.setState({ message: { ...message, undo: false } });
}

/** Without a store (a private window) files still work. */
export function createKeeping(
  desk: Desk,
  kept: { store: Store; autosave: Autosave } | null,
  saveState: StoreApi<SaveState>,
  page: Document,
): Keeping {
  return {
    saveState,
    saveFile() {
      const { plan, proposal } = desk.getState();
      const { name } = plan;
      savePlanFile(plan, page);
      if (proposal.length === 0) say(desk, { id: 'fileSaved', params: { name } });
      else say(desk, { id: 'fileSavedWithout', params: { name, count: proposal.length } });
    },
    async openFile(file) {
      const opened = await openPlanFile(file);
      if (!opened.ok) {
        const { code, where, params } = opened.reason;
        say(desk, { id: 'fileRefused', params: { ...params, code, where } });
        return;
      }
      openOnDesk(desk, opened.plan, { isExample: false });
      say(desk, { id: 'fileOpened', params: { name: opened.plan.name } });
    },
    templates: kept === null ? NO_TEMPLATES : templatesIn(kept.store, Date.now),
    plans: kept === null ? NO_KEPT_PLANS : keptPlansIn(kept.store, Date.now),
    openId() {
      const { id } = desk.getState().plan;
      return kept?.autosave.keptAs(id) ?? id;
    },
    async openKept(planId) {
      await kept?.autosave.flush();
      const read = kept === null ? null : await readPlan(kept.store, planId);
      if (read === null) say(desk, { id: 'fileRefused', params: { code: 'notAPlan', where: '' } });
      else await openRead(desk, read, kept?.autosave ?? null);
    },
  };
}
