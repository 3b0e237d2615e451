import '../storage/memoryDatabase.ts';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Started, type Surroundings, start } from '../../src/app/start.ts';
import { startPlan } from '../../src/desk/acts/startPlan.ts';
import { beginGesture, commit, commitGesture, draftGesture, openOnDesk, undo } from '../../src/desk/edit.ts';
import { placeFitting } from '../../src/desk/place.ts';
import { proposeFeed, refuseAll } from '../../src/desk/proposing.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { PLAN_VERSION, type Plan } from '../../src/plan/schema.ts';
import { openStore, type Store } from '../../src/storage/store.ts';
import { vanWithFeed } from '../desk/plans.ts';

const example = (): Plan => ({ ...vanWithFeed(), id: 'example', name: 'Carnival van' });
const rename = (name: string) => (plan: Plan) => renamePlan(plan, name);

function around(change: Partial<Surroundings> = {}): Surroundings {
  return {
    openStore,
    openTabs: () => ({ tell: () => undefined, onSaved: () => undefined, close: () => undefined }),
    fetchExample: () => Promise.resolve(savePlan(example())),
    adaptExample: (plan) => Promise.resolve(plan),
    emptyName: 'Untitled plan',
    coarsePointer: false,
    now: () => 1_000_000,
    page: document,
    ...change,
  };
}

const saved = ({ keeping }: Started) => vi.waitFor(() => expect(keeping.saveState.getState().kind).toBe('saved'));

/** A visit that ends when its page is closed: the next one sees only what was kept. */
async function visit(change: Partial<Surroundings> = {}): Promise<Started & { store: Store }> {
  const store = await openStore();
  return { ...(await start(around({ openStore: () => Promise.resolve(store), ...change }))), store };
}

afterEach(() => vi.useRealTimers());

describe('a first visit', () => {
  it('shows the example, and keeps nothing of it', async () => {
    const { desk, store, keeping } = await visit();
    expect(savePlan(desk.getState().plan)).toBe(savePlan(example()));
    expect(desk.getState()).toMatchObject({ isExample: true, message: null });
    desk.setState({ selection: { kind: 'fitting', id: 'amp' } });
    await Promise.resolve();
    expect(await store.listPlans()).toEqual([]);
    expect(keeping.saveState.getState()).toEqual({ kind: 'idle' });
  });

  it('shows the example as the device wants it, or as it came', async () => {
    const { desk } = await visit({ adaptExample: async (plan) => renamePlan(plan, 'Karnevalswagen') });
    expect(desk.getState()).toMatchObject({ isExample: true, plan: { name: 'Karnevalswagen' } });
    const plain = await visit({ adaptExample: () => Promise.reject(new Error('offline')) });
    expect(plain.desk.getState()).toMatchObject({ isExample: true, message: null, plan: { name: 'Carnival van' } });
  });

  it('keeps the copy that the first change makes, and the next visit opens it', async () => {
    const first = await visit();
    commit(first.desk, 'rename', rename('My van'));
    await saved(first);
    first.store.close();
    const next = await visit();
    expect(savePlan(next.desk.getState().plan)).toBe(savePlan(first.desk.getState().plan));
    expect(next.desk.getState().plan.id).not.toBe('example');
    expect(next.desk.getState().isExample).toBe(false);
    expect((await next.store.listPlans()).map(({ planId }) => planId)).toEqual([next.desk.getState().plan.id]);
  });

  it('without the example has an empty plan and says so', async () => {
    for (const fetchExample of [() => Promise.reject(new Error('offline')), () => Promise.resolve('<!doctype html>')]) {
      const { desk, store } = await visit({ fetchExample });
      expect(desk.getState().plan).toMatchObject({ name: 'Untitled plan', fittings: [], runs: [] });
      expect(desk.getState()).toMatchObject({ isExample: false, message: { id: 'exampleMissing' } });
      store.close();
    }
  });

  it('takes big fingers from the pointer', async () => {
    expect((await visit({ coarsePointer: true })).desk.getState().bigFingers).toBe(true);
    expect((await visit()).desk.getState().bigFingers).toBe(false);
  });
});

describe('keeping', () => {
  it('writes no draft: only what the hand lets go', async () => {
    const visiting = await visit();
    const { desk, store } = visiting;
    commit(desk, 'rename', rename('My van'));
    await saved(visiting);
    const { id } = desk.getState().plan;
    beginGesture(desk, 'move');
    for (const xM of [3, 2, 1]) draftGesture(desk, (plan) => moveFitting(plan, 'amp', { xM, yM: 1 }));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(await store.revisions(id)).toHaveLength(1);
    commitGesture(desk);
    await vi.waitFor(async () => expect(await store.revisions(id)).toHaveLength(2));
    expect((await store.latest(id))?.text).toBe(savePlan(desk.getState().plan));
  });

  it('writes an undo too', async () => {
    const visiting = await visit();
    const { desk, store } = visiting;
    commit(desk, 'rename', rename('My van'));
    undo(desk);
    await saved(visiting);
    expect((await store.latest(desk.getState().plan.id))?.text).toBe(savePlan(desk.getState().plan));
    expect(desk.getState().plan.name).toBe('Carnival van');
  });

  it('lists what is kept and opens it again, with both plans whole', async () => {
    const visiting = await visit();
    const { desk, keeping } = visiting;
    commit(desk, 'rename', rename('First'));
    const first = desk.getState().plan;
    startPlan(desk, { name: 'Second', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    await vi.waitFor(async () => {
      const names = (await keeping.plans.list()).map(({ plan }) => plan?.name ?? null);
      expect(names.sort()).toEqual(['First', 'Second']);
    });
    await keeping.openKept(first.id);
    expect(savePlan(desk.getState().plan)).toBe(savePlan(first));
    commit(desk, 'rename', rename('First again'));
    await vi.waitFor(async () => {
      const names = (await keeping.plans.list()).map(({ plan }) => plan?.name ?? null);
      expect(names.sort()).toEqual(['First again', 'Second']);
    });
  });
});

describe("what is not the user's own", () => {
  it('is not kept: the example put back on the desk', async () => {
    const visiting = await visit();
    commit(visiting.desk, 'rename', rename('Mine'));
    await saved(visiting);
    openOnDesk(visiting.desk, example(), { isExample: true });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await visiting.keeping.plans.list()).map(({ plan }) => plan?.name ?? null)).toEqual(['Mine']);
  });
});

describe('a later visit', () => {
  async function leave(name: string): Promise<string> {
    const visiting = await visit();
    commit(visiting.desk, 'rename', rename(name));
    await saved(visiting);
    visiting.store.close();
    return visiting.desk.getState().plan.id;
  }

  it('falls back to the state before when the newest is damaged, says when that was, and goes on after it', async () => {
    const id = await leave('Whole');
    const store = await openStore();
    await store.saveRecord(id, 1, 'damaged', 2_000_000);
    const visiting = await visit();
    expect(visiting.desk.getState().plan.name).toBe('Whole');
    expect(visiting.desk.getState().message).toEqual({ id: 'olderOpened', params: { time: 1_000_000 }, undo: false });
    commit(visiting.desk, 'rename', rename('Mended'));
    await saved(visiting);
    expect((await store.revisions(id)).map(({ revision }) => revision)).toEqual([3, 2, 1]);
  });

  it('opens any kept plan, and its changes follow what was kept', async () => {
    const id = await leave('First');
    const between = await visit();
    startPlan(between.desk, { name: 'Second', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    await saved(between);
    between.store.close();

    const visiting = await visit();
    await visiting.keeping.openKept(id);
    expect(visiting.desk.getState().plan.name).toBe('First');
    commit(visiting.desk, 'rename', rename('First, changed'));
    await vi.waitFor(async () => expect(await visiting.store.revisions(id)).toHaveLength(2));
    expect(await visiting.store.listPlans()).toHaveLength(2);
    expect(visiting.desk.getState().message).toBeNull();
  });

  it('opens a kept plan at the state before a damaged one, says so, and goes on after it', async () => {
    const id = await leave('Whole');
    const visiting = await visit();
    startPlan(visiting.desk, { name: 'Other', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    await saved(visiting);
    await visiting.store.saveRecord(id, 1, 'damaged', 2_000_000);
    await visiting.keeping.openKept(id);
    expect(visiting.desk.getState().message?.id).toBe('olderOpened');
    commit(visiting.desk, 'rename', rename('Mended'));
    await vi.waitFor(async () => expect(await visiting.store.revisions(id)).toHaveLength(3));
    expect(await visiting.store.listPlans()).toHaveLength(2);
  });

  it('falls back to the example when nothing of the plan opens, and leaves the records', async () => {
    const store = await openStore();
    await store.saveRecord('lost', 0, 'damaged', 1);
    await store.setLast('lost');
    const { desk } = await visit();
    expect(desk.getState()).toMatchObject({ isExample: true, message: { id: 'savedDamaged' } });
    expect(await store.revisions('lost')).toHaveLength(1);
  });
});

describe('what is proposed', () => {
  const taped = 2.7432;

  /** A plan with a feed proposed for it, one run of it taped. */
  async function withProposal() {
    const visiting = await visit();
    const { desk } = visiting;
    startPlan(desk, { name: 'Proposed', outline: DEFAULT_OUTLINES.hatchback, mirrored: false });
    const sheetId = desk.getState().plan.sheets[0]?.id ?? '';
    placeFitting(desk, 'battery', { xM: 0.6, yM: 1.39 }, sheetId, 'Battery');
    placeFitting(desk, 'amplifier', { xM: 3.5, yM: 0.5 }, sheetId, 'Amplifier');
    await proposeFeed(desk);
    const run = desk.getState().proposal.find(({ kind }) => kind === 'run');
    commit(desk, 'change', (plan) => changeRun(plan, run?.id ?? '', { tapedM: taped }));
    await saved(visiting);
    return { ...visiting, runId: run?.id };
  }

  it('lies there again at the next visit, with what was entered on it', async () => {
    const first = await withProposal();
    const { proposal, plan } = first.desk.getState();
    expect(proposal.length).toBeGreaterThan(5);
    first.store.close();
    const next = await visit();
    expect(next.desk.getState().proposal).toEqual(proposal);
    expect(savePlan(next.desk.getState().plan)).toBe(savePlan(plan));
    const again = next.desk.getState().proposal.find(({ id }) => id === first.runId);
    expect(again).toMatchObject({ run: { tapedM: taped } });
    refuseAll(next.desk);
    await saved(next);
    next.store.close();
    expect((await visit()).desk.getState().proposal).toEqual([]);
  });

  it('comes and goes with its plan', async () => {
    const { desk, keeping, ...first } = await withProposal();
    const { proposal, plan } = desk.getState();
    startPlan(desk, { name: 'Other', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    expect(desk.getState().proposal).toEqual([]);
    await vi.waitFor(async () => expect(await first.store.listPlans()).toHaveLength(2));
    await keeping.openKept(plan.id);
    expect(desk.getState().proposal).toEqual(proposal);
  });

  it('is no part of a saved file, which says so', async () => {
    const { desk, keeping } = await withProposal();
    const { proposal, plan } = desk.getState();
    const files: Blob[] = [];
    vi.spyOn(URL, 'createObjectURL').mockImplementation((file) => {
      files.push(file as Blob);
      return 'blob:plan';
    });
    keeping.saveFile();
    expect(await files[0]?.text()).toBe(savePlan(plan));
    const count = proposal.length;
    expect(desk.getState().message).toMatchObject({ id: 'fileSavedWithout', params: { name: 'Proposed', count } });
    vi.restoreAllMocks();
  });
});

describe('a browser that keeps nothing', () => {
  it('still shows the page and says so', async () => {
    const started = await start(around({ openStore: () => Promise.reject(new Error('private')) }));
    expect(started.desk.getState()).toMatchObject({ isExample: true, message: { id: 'notKept' } });
    expect(started.keeping.saveState.getState()).toEqual({ kind: 'failed', reason: 'unavailable' });
    commit(started.desk, 'rename', rename('My van'));
    expect(started.desk.getState().plan.name).toBe('My van');
    expect(await started.keeping.plans.list()).toEqual([]);
  });

  it('is not waited for without end', async () => {
    vi.useFakeTimers();
    const starting = start(around({ openStore: () => new Promise(() => undefined) }));
    await vi.advanceTimersByTimeAsync(5000);
    expect((await starting).desk.getState().message?.id).toBe('notKept');
  });

  it('is told once when its room is full, not at every act', async () => {
    const store = await openStore();
    const full = { ...store, saveRecord: () => Promise.reject(new DOMException('full', 'QuotaExceededError')) };
    const { desk, keeping } = await start(around({ openStore: () => Promise.resolve(full) }));
    commit(desk, 'rename', rename('One'));
    await vi.waitFor(() => expect(desk.getState().message?.id).toBe('storageFull'));
    desk.setState({ message: null });
    commit(desk, 'rename', rename('Two'));
    await vi.waitFor(() => expect(keeping.saveState.getState().kind).toBe('failed'));
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(desk.getState().message).toBeNull();
    expect(desk.getState().plan.name).toBe('Two');
  });
});

describe('a file', () => {
  it('that opens takes the desk, is kept, and can be left for the plan before', async () => {
    const visiting = await visit();
    const { desk, keeping, store } = visiting;
    commit(desk, 'rename', rename('Before'));
    const before = desk.getState().plan;
    const plan = { ...vanWithFeed(), id: 'from-file', name: 'From a file' };
    await keeping.openFile(new File([savePlan(plan)], 'x.plan.json'));
    expect(savePlan(desk.getState().plan)).toBe(savePlan(plan));
    expect(desk.getState()).toMatchObject({ isExample: false, message: { id: 'fileOpened' } });
    await vi.waitFor(async () => expect(await store.getLast()).toBe('from-file'));
    expect((await store.latest(before.id))?.text).toBe(savePlan(before));
  });

  it('that is bad says why and leaves the open plan, its history and its draft of nothing', async () => {
    const { desk, keeping } = await visit();
    commit(desk, 'rename', rename('Open'));
    const { plan } = desk.getState();
    const newer = savePlan(vanWithFeed()).replace(`"version": ${PLAN_VERSION}`, `"version": ${PLAN_VERSION + 1}`);
    await keeping.openFile(new File([newer], 'x.plan.json'));
    expect(desk.getState().plan).toBe(plan);
    expect(desk.getState().message).toMatchObject({
      id: 'fileRefused',
      params: { code: 'newerVersion', where: 'version' },
    });
    undo(desk);
    expect(desk.getState().plan.name).toBe('Carnival van');
  });

  it('a kept plan that was opened and not changed is what the next visit opens, also when the one before was taken out', async () => {
    const visiting = await visit();
    startPlan(visiting.desk, { name: 'First van', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });
    await saved(visiting);
    const first = visiting.desk.getState().plan.id;
    startPlan(visiting.desk, { name: 'Second van', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });
    await vi.waitFor(async () => expect(await visiting.store.listPlans()).toHaveLength(2));
    const second = visiting.desk.getState().plan.id;
    await visiting.keeping.openKept(first);
    await visiting.keeping.plans.remove(second);
    await vi.waitFor(async () => expect(await visiting.store.getLast()).toBe(first));
    visiting.store.close();
    const next = await visit();
    expect(next.desk.getState()).toMatchObject({ plan: { name: 'First van' }, message: null });
  });
});
