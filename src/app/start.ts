/** From an empty page to a plan on the desk that is kept as it changes. */
import { createDesk, type Desk, type Message } from '../desk/desk.ts';
import { NOTHING_PROPOSED } from '../desk/whole.ts';
import { newId, newPlan } from '../plan/create.ts';
import { openPlan } from '../plan/open.ts';
import { DEFAULT_OUTLINES } from '../plan/outline.ts';
import type { Proposal } from '../plan/propose/proposal.ts';
import type { Plan } from '../plan/schema.ts';
import { createAutosave, type SaveState } from '../storage/autosave.ts';
import { type ReadPlan, readPlan } from '../storage/read.ts';
import type { Store } from '../storage/store.ts';
import type { Tabs } from '../storage/tabs.ts';
import { createKeeping, type Keeping, keepChanges, newSaveState, proposalOf, say } from './keeping.ts';

/** What a start needs of the page around it. */
export interface Surroundings {
  /** Rejects, or never settles, where the browser keeps nothing. */
  openStore(): Promise<Store>;
  openTabs(): Tabs;
  /** The text of the shipped example; rejects when it cannot be loaded. */
  fetchExample(): Promise<string>;
  /** The example as this device shows it. */
  adaptExample(plan: Plan): Promise<Plan>;
  /** A name for the empty plan that stands in for a missing example. */
  emptyName: string;
  /** Fingers rather than a mouse. */
  coarsePointer: boolean;
  now(): number;
  page: Document;
}

export interface Started {
  desk: Desk;
  keeping: Keeping;
}

/** Some browsers' databases never answer on a first load; the page then goes on without. */
const STORE_PATIENCE_MS = 4000;

interface First {
  plan: Plan;
  isExample: boolean;
  proposal: Proposal;
  read: ReadPlan | null;
  message: Omit<Message, 'undo'> | null;
}

export async function start(around: Surroundings): Promise<Started> {
  const store = await patiently(around.openStore());
  const first = await firstPlan(store, around);
  const desk = createDesk(first.plan, {
    isExample: first.isExample,
    bigFingers: around.coarsePointer,
    proposal: first.proposal,
  });
  const saveState = newSaveState();
  const kept = store === null ? null : { store, autosave: keepIn(store, desk, around, saveState.setState) };
  if (kept !== null && first.read !== null) kept.autosave.adopt(first.read);
  if (kept === null) saveState.setState({ kind: 'failed', reason: 'unavailable' });
  const message = first.message ?? (kept === null ? ({ id: 'notKept', params: {} } as const) : null);
  if (message !== null) say(desk, message);
  return { desk, keeping: createKeeping(desk, kept, saveState, around.page) };
}

function keepIn(store: Store, desk: Desk, around: Surroundings, onState: (state: SaveState) => void) {
  // said once for each time that keeping stops, not at every act that is then not kept
  let isSaid = false;
  const autosave = createAutosave({
    store,
    tabs: around.openTabs(),
    now: around.now,
    onState: (state) => {
      onState(state);
      if (state.kind === 'saved') isSaid = false;
      if (state.kind !== 'failed' || isSaid) return;
      isSaid = true;
      say(desk, { id: state.reason === 'full' ? 'storageFull' : 'notKept', params: {} });
    },
    onOtherTab: (planId) => {
      if (planId === desk.getState().plan.id) say(desk, { id: 'otherTab', params: {} });
    },
  });
  keepChanges(desk, autosave);
  // what failed before is tried again when the tablet goes to sleep or the page goes away
  around.page.addEventListener('visibilitychange', () => void autosave.flush());
  around.page.defaultView?.addEventListener('pagehide', () => void autosave.flush());
  return autosave;
}

/** The plan of the last visit; on a first visit, or when nothing of it opens, the example; without that, an empty one. */
async function firstPlan(store: Store | null, around: Surroundings): Promise<First> {
  const last = store === null ? null : await lastPlan(store);
  if (last?.read) {
    const { plan, isOlder, time } = last.read;
    const message = isOlder ? ({ id: 'olderOpened', params: { time } } as const) : null;
    return { plan, isExample: false, proposal: await proposalOf(last.read), read: last.read, message };
  }
  const isDamaged = last !== null;
  const example = await examplePlan(around);
  if (example === null) {
    const outline = DEFAULT_OUTLINES.panelVan;
    const empty = newPlan({ id: newId(), sheetId: newId(), name: around.emptyName, outline, mirrored: false });
    return {
      plan: empty,
      isExample: false,
      proposal: NOTHING_PROPOSED,
      read: null,
      message: { id: 'exampleMissing', params: {} },
    };
  }
  return {
    plan: example,
    isExample: true,
    proposal: NOTHING_PROPOSED,
    read: null,
    message: isDamaged ? { id: 'savedDamaged', params: {} } : null,
  };
}

/** null: no last visit. `read` null: there was one, and nothing of it opens. */
async function lastPlan(store: Store): Promise<{ read: ReadPlan | null } | null> {
  try {
    const planId = await store.getLast();
    return planId === null ? null : { read: await readPlan(store, planId) };
  } catch {
    return { read: null };
  }
}

async function examplePlan(around: Surroundings): Promise<Plan | null> {
  try {
    const opened = openPlan(await around.fetchExample());
    if (!opened.ok) return null;
    // in English rather than not at all
    return await around.adaptExample(opened.plan).catch(() => opened.plan);
  } catch {
    return null;
  }
}

async function patiently(opening: Promise<Store>): Promise<Store | null> {
  const tooLong = new Promise<null>((resolve) => setTimeout(() => resolve(null), STORE_PATIENCE_MS));
  try {
    return await Promise.race([opening, tooLong]);
  } catch {
    return null;
  }
}
