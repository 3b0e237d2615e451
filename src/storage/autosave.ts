/**
 * Every change of the plan, and of what is proposed for it, is written at once, as a revision of its own; only while a
 * write is under way do later changes wait, and then the last of them is written. A plan has one writer: where another
 * tab has saved it in between, this tab's further states are kept under an id of their own, so that neither overwrites
 * the other.
 */
import { newId } from '../plan/create.ts';
import type { Proposal } from '../plan/propose/proposal.ts';
import { savePlan } from '../plan/save.ts';
import type { Plan } from '../plan/schema.ts';
import type { ReadPlan } from './read.ts';
import type { Store } from './store.ts';
import type { Tabs } from './tabs.ts';

type SaveFailure = 'full' | 'unavailable';

export type SaveState =
  | { kind: 'idle' }
  | { kind: 'saving' }
  | { kind: 'saved' }
  | { kind: 'failed'; reason: SaveFailure };

export interface AutosaveOptions {
  store: Store;
  tabs: Tabs;
  now: () => number;
  onState: (state: SaveState) => void;
  /** Another tab saves the plan that this tab has; told once per plan. */
  onOtherTab: (planId: string) => void;
}

export interface Autosave {
  /** Tells which record the plan was read from, so that the next save follows it. */
  adopt(read: ReadPlan): void;
  /** The plan has changed, or what is proposed for it; written as soon as the write before is done. */
  keep(plan: Plan, proposal?: Proposal): void;
  /** The id under which this tab keeps a plan: its own, or where another tab has saved that one, another. */
  keptAs(planId: string): string;
  /** Resolves when nothing is left to write, or writing failed. Tries again what failed before. */
  flush(): Promise<void>;
}

/** What this tab knows of one plan's records. */
interface Thread {
  /** The id it is kept under: the plan's own, until another tab saves that one. */
  storedId: string;
  /** The newest revision read or written here; 0 for none. */
  revision: number;
  text: string | null;
  proposal: string;
  warned: boolean;
}

/** What is kept together. */
interface State {
  plan: Plan;
  proposal: Proposal;
}

const proposalText = (proposal: Proposal): string => (proposal.length === 0 ? '' : JSON.stringify(proposal));

export function createAutosave({ store, tabs, now, onState, onOtherTab }: AutosaveOptions): Autosave {
  const threads = new Map<string, Thread>();
  /** The newest state of each plan that is still to be written; the plan changed last comes last. */
  const waiting = new Map<string, State>();
  /** The plan that the next visit opens, as far as this tab has said so. */
  let lastOpened: string | null = null;
  let running: Promise<void> | null = null;

  const threadOf = (planId: string): Thread => {
    const known = threads.get(planId) ?? { storedId: planId, revision: 0, text: null, proposal: '', warned: false };
    threads.set(planId, known);
    return known;
  };

  const warn = (planId: string, thread: Thread): void => {
    if (thread.warned) return;
    thread.warned = true;
    onOtherTab(planId);
  };

  tabs.onSaved((saved) => {
    for (const [planId, thread] of threads) {
      if (thread.storedId === saved.planId && saved.revision > thread.revision) warn(planId, thread);
    }
  });

  async function write(state: State): Promise<void> {
    const { plan } = state;
    const thread = threadOf(plan.id);
    const text = savePlan(plan.id === thread.storedId ? plan : { ...plan, id: thread.storedId });
    const proposal = proposalText(state.proposal);
    if (text !== thread.text || proposal !== thread.proposal) {
      const result = await store.saveRecord(thread.storedId, thread.revision, text, now(), proposal);
      if (!result.ok && result.latest.text !== text) {
        if (thread.revision > 0) warn(plan.id, thread);
        threads.set(plan.id, { storedId: newId(), revision: 0, text: null, proposal: '', warned: thread.warned });
        return write(state);
      }
      thread.revision = result.ok ? result.revision : result.latest.revision;
      thread.text = text;
      thread.proposal = result.ok ? proposal : (result.latest.proposal ?? '');
      // one plan, of which only the proposal differs: the later one stands
      if (thread.proposal !== proposal) return write(state);
      if (result.ok) tabs.tell({ planId: thread.storedId, revision: thread.revision });
    }
    if (lastOpened !== thread.storedId) await store.setLast(thread.storedId);
    lastOpened = thread.storedId;
  }

  async function writeAll(): Promise<void> {
    // the act that changed the plan ends first
    await null;
    onState({ kind: 'saving' });
    try {
      for (let next = firstOf(waiting); next !== null; next = firstOf(waiting)) {
        await write(next);
        // a newer state that came in meanwhile stays
        if (waiting.get(next.plan.id) === next) waiting.delete(next.plan.id);
      }
      onState({ kind: 'saved' });
    } catch (error) {
      onState({ kind: 'failed', reason: failureOf(error) });
    }
  }

  function run(): Promise<void> {
    if (running === null && waiting.size > 0) {
      running = writeAll().finally(() => {
        running = null;
      });
    }
    return running ?? Promise.resolve();
  }

  return {
    adopt({ plan, planId, newestRevision, text, proposal }) {
      threads.set(plan.id, { storedId: planId, revision: newestRevision, text, proposal, warned: false });
    },
    keep(plan, proposal = []) {
      waiting.delete(plan.id);
      waiting.set(plan.id, { plan, proposal });
      void run();
    },
    keptAs: (planId) => threads.get(planId)?.storedId ?? planId,
    flush: run,
  };
}

const firstOf = (waiting: ReadonlyMap<string, State>): State | null => waiting.values().next().value ?? null;

function failureOf(error: unknown): SaveFailure {
  return error instanceof Error && error.name === 'QuotaExceededError' ? 'full' : 'unavailable';
}
