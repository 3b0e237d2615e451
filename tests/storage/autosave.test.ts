import './memoryDatabase.ts';
import { describe, expect, it } from 'vitest';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import type { Proposal } from '../../src/plan/propose/proposal.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { createAutosave, type SaveState } from '../../src/storage/autosave.ts';
import { type ReadPlan, readPlan } from '../../src/storage/read.ts';
import { openStore, type Store } from '../../src/storage/store.ts';
import type { Saved, Tabs } from '../../src/storage/tabs.ts';
import { emptyVan } from '../desk/plans.ts';

const named = (name: string, plan: Plan = emptyVan()): Plan => renamePlan(plan, name);

/** Tabs that hear each other at once. */
function tabsTogether(count: number): Tabs[] {
  const listeners: ((saved: Saved) => void)[][] = Array.from({ length: count }, () => []);
  return listeners.map((own) => ({
    tell: (saved) => {
      for (const others of listeners) if (others !== own) for (const listener of others) listener(saved);
    },
    onSaved: (listener) => own.push(listener),
    close: () => undefined,
  }));
}

const [ALONE] = tabsTogether(1);

function tabOn(store: Store, tabs: Tabs = ALONE as Tabs) {
  const states: SaveState[] = [];
  const otherTab: string[] = [];
  let time = 1000;
  const autosave = createAutosave({
    store,
    tabs,
    now: () => {
      time += 1;
      return time;
    },
    onState: (state) => states.push(state),
    onOtherTab: (planId) => otherTab.push(planId),
  });
  return { autosave, states, otherTab };
}

/** A store whose saves can be held back, or fail. */
function hindered(store: Store, hinder: () => Promise<void>): Store {
  return {
    ...store,
    saveRecord: async (...args) => {
      await hinder();
      return store.saveRecord(...args);
    },
  };
}

async function read(store: Store, planId: string): Promise<ReadPlan> {
  const found = await readPlan(store, planId);
  if (found === null) throw new Error(`${planId} is not kept`);
  return found;
}

describe('autosave', () => {
  it('writes a change at once, makes it the last plan, and says so', async () => {
    const store = await openStore();
    const { autosave, states } = tabOn(store);
    autosave.keep(named('One'));
    await autosave.flush();
    expect((await store.latest('plan-1'))?.text).toBe(savePlan(named('One')));
    expect(await store.getLast()).toBe('plan-1');
    expect(states.map(({ kind }) => kind)).toEqual(['saving', 'saved']);
  });

  it('writes the last of several changes in one act once', async () => {
    const store = await openStore();
    const { autosave } = tabOn(store);
    for (const name of ['One', 'Two', 'Three']) autosave.keep(named(name));
    await autosave.flush();
    expect(await store.revisions('plan-1')).toHaveLength(1);
    expect((await read(store, 'plan-1')).plan.name).toBe('Three');
  });

  it('while a write is under way holds the newest change, and writes it after', async () => {
    const store = await openStore();
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const { autosave } = tabOn(hindered(store, () => held));
    autosave.keep(named('One'));
    await Promise.resolve();
    await Promise.resolve();
    autosave.keep(named('Two'));
    autosave.keep(named('Three'));
    release();
    await autosave.flush();
    expect((await store.revisions('plan-1')).map(({ text }) => text)).toEqual([
      savePlan(named('Three')),
      savePlan(named('One')),
    ]);
  });

  it('loses nothing of a plan when another one is opened before it is written', async () => {
    const store = await openStore();
    const { autosave } = tabOn(store);
    autosave.keep(named('One'));
    autosave.keep({ ...emptyVan(), id: 'plan-2' });
    await autosave.flush();
    expect((await read(store, 'plan-1')).plan.name).toBe('One');
    expect((await read(store, 'plan-2')).plan.id).toBe('plan-2');
    expect(await store.getLast()).toBe('plan-2');
  });

  it('writes no record for a plan that is as it was saved', async () => {
    const store = await openStore();
    const { autosave } = tabOn(store);
    autosave.keep(named('One'));
    await autosave.flush();
    autosave.keep(named('One'));
    await autosave.flush();
    expect(await store.revisions('plan-1')).toHaveLength(1);
  });

  it('goes on after the records it was read from, a damaged newest one included', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, savePlan(named('One')), 1);
    await store.saveRecord('plan-1', 1, 'damaged', 2);
    const { autosave, otherTab } = tabOn(store);
    autosave.adopt(await read(store, 'plan-1'));
    autosave.keep(named('Two'));
    await autosave.flush();
    expect((await store.latest('plan-1'))?.revision).toBe(3);
    expect((await read(store, 'plan-1')).plan.name).toBe('Two');
    expect(otherTab).toEqual([]);
  });
});

describe('what is proposed', () => {
  const fuse = newFittingIn(emptyVan(), 'fuse', { id: 'f', name: 'Fuse', sheetId: 'sheet-1', at: { xM: 1, yM: 1 } });
  const ghost = (why: 'firstFuse' | 'moved'): Proposal => [{ kind: 'fitting', id: 'f', fitting: fuse, why }];

  it('is kept beside the plan, in no text of it, and goes with the proposal', async () => {
    const store = await openStore();
    const { autosave } = tabOn(store);
    autosave.keep(named('One'), ghost('firstFuse'));
    await autosave.flush();
    expect(await read(store, 'plan-1')).toMatchObject({
      text: savePlan(named('One')),
      proposal: JSON.stringify(ghost('firstFuse')),
    });
    autosave.keep(named('One'), ghost('moved'));
    await autosave.flush();
    expect((await read(store, 'plan-1')).proposal).toBe(JSON.stringify(ghost('moved')));
    autosave.keep(named('One'), []);
    await autosave.flush();
    expect((await read(store, 'plan-1')).proposal).toBe('');
    expect(await store.revisions('plan-1')).toHaveLength(3);
    autosave.keep(named('One'), []);
    await autosave.flush();
    expect(await store.revisions('plan-1')).toHaveLength(3);
  });

  it('makes no second plan where another tab has the same one without it', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, savePlan(named('Start')), 1);
    const [one, two] = tabsTogether(2).map((tabs) => tabOn(store, tabs));
    if (one === undefined || two === undefined) throw new Error('two tabs');
    for (const tab of [one, two]) tab.autosave.adopt(await read(store, 'plan-1'));
    one.autosave.keep(named('Same'));
    await one.autosave.flush();
    two.autosave.keep(named('Same'), ghost('firstFuse'));
    await two.autosave.flush();
    expect(await store.listPlans()).toHaveLength(1);
    expect((await read(store, 'plan-1')).proposal).toBe(JSON.stringify(ghost('firstFuse')));
    expect(await store.revisions('plan-1')).toHaveLength(3);
  });
});

describe('a store that fails', () => {
  const quota = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));

  it('is reported as full, or as unavailable', async () => {
    const store = await openStore();
    const full = tabOn(hindered(store, quota));
    full.autosave.keep(named('One'));
    await full.autosave.flush();
    expect(full.states.at(-1)).toEqual({ kind: 'failed', reason: 'full' });

    store.close();
    const closed = tabOn(store);
    closed.autosave.keep(named('One'));
    await closed.autosave.flush();
    expect(closed.states.at(-1)).toEqual({ kind: 'failed', reason: 'unavailable' });
  });

  it('keeps what failed and writes it on the next try', async () => {
    const store = await openStore();
    let isFull = true;
    const { autosave, states } = tabOn(hindered(store, () => (isFull ? quota() : Promise.resolve())));
    autosave.keep(named('One'));
    await autosave.flush();
    expect(await store.latest('plan-1')).toBeNull();
    isFull = false;
    await autosave.flush();
    expect((await read(store, 'plan-1')).plan.name).toBe('One');
    expect(states.at(-1)).toEqual({ kind: 'saved' });
  });
});

describe('two tabs with one plan', () => {
  async function bothOpen() {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, savePlan(named('Start')), 1);
    const [one, two] = tabsTogether(2).map((tabs) => tabOn(store, tabs));
    if (one === undefined || two === undefined) throw new Error('two tabs');
    for (const tab of [one, two]) tab.autosave.adopt(await read(store, 'plan-1'));
    return { store, one, two };
  }

  it('the idle one is told as soon as the other saves, once', async () => {
    const { one, two } = await bothOpen();
    for (const name of ['Mine', 'Mine too']) {
      one.autosave.keep(named(name));
      await one.autosave.flush();
    }
    expect(two.otherTab).toEqual(['plan-1']);
    expect(one.otherTab).toEqual([]);
  });

  it('keep both: the later one goes on under an id of its own, and neither is overwritten', async () => {
    const { store, one, two } = await bothOpen();
    one.autosave.keep(named('Mine'));
    await one.autosave.flush();
    for (const name of ['Theirs', 'Theirs again']) {
      two.autosave.keep(named(name));
      await two.autosave.flush();
    }
    one.autosave.keep(named('Mine again'));
    await one.autosave.flush();

    expect((await read(store, 'plan-1')).plan.name).toBe('Mine again');
    expect(one.otherTab).toEqual([]);
    const plans = await store.listPlans();
    expect(plans).toHaveLength(2);
    const forkId = plans.find(({ planId }) => planId !== 'plan-1')?.planId ?? '';
    const fork = await read(store, forkId);
    expect(fork.plan.name).toBe('Theirs again');
    // the kept text is the plan it is kept as, so that it opens as itself
    expect(fork.plan.id).toBe(forkId);
    expect([one.autosave.keptAs('plan-1'), two.autosave.keptAs('plan-1')]).toEqual(['plan-1', forkId]);
    expect(two.autosave.keptAs('never seen')).toBe('never seen');
    expect(two.otherTab).toEqual(['plan-1']);
    expect((await store.revisions(forkId)).map(({ revision }) => revision)).toEqual([2, 1]);
  });

  it('are one plan while both say the same', async () => {
    const { store, one, two } = await bothOpen();
    for (const tab of [one, two]) {
      tab.autosave.keep(named('Same'));
      await tab.autosave.flush();
    }
    expect(await store.listPlans()).toHaveLength(1);
    expect(await store.revisions('plan-1')).toHaveLength(2);
  });

  it('lose nothing in a race of saves', async () => {
    const { store, one, two } = await bothOpen();
    one.autosave.keep(named('Mine'));
    two.autosave.keep(named('Theirs'));
    await Promise.all([one.autosave.flush(), two.autosave.flush()]);
    const names = await Promise.all(
      (await store.listPlans()).map(async ({ planId }) => (await read(store, planId)).plan.name),
    );
    expect(names.sort()).toEqual(['Mine', 'Theirs']);
  });
});

describe('a file with the id of a kept plan', () => {
  it('is kept beside that plan, without a word about another tab', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, savePlan(named('Newer here')), 1);
    const { autosave, otherTab } = tabOn(store);
    autosave.keep(named('Older file'));
    await autosave.flush();
    expect((await read(store, 'plan-1')).plan.name).toBe('Newer here');
    expect(await store.listPlans()).toHaveLength(2);
    expect(otherTab).toEqual([]);
  });

  it('is that plan when it says the same', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, savePlan(named('Same')), 1);
    const { autosave } = tabOn(store);
    autosave.keep(named('Same'));
    await autosave.flush();
    autosave.keep(named('Changed'));
    await autosave.flush();
    expect(await store.listPlans()).toHaveLength(1);
    expect((await store.latest('plan-1'))?.revision).toBe(2);
  });
});
