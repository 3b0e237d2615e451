/** Plans kept in the browser: copies, names, and the bin with its way back, over the real store. */
import '../storage/memoryDatabase.ts';
import { describe, expect, it } from 'vitest';
import { keptPlansIn } from '../../src/app/keptPlans.ts';
import { savePlan } from '../../src/plan/save.ts';
import { openStore, type Store } from '../../src/storage/store.ts';
import { vanWithFeed } from '../desk/plans.ts';

async function withTwoPlans(): Promise<{ store: Store; plans: ReturnType<typeof keptPlansIn> }> {
  const store = await openStore();
  await store.saveRecord('van', 0, savePlan({ ...vanWithFeed(), id: 'van', name: 'Van' }), 100);
  await store.saveRecord('van', 1, savePlan({ ...vanWithFeed(), id: 'van', name: 'Van, later' }), 200);
  await store.saveRecord('odd', 0, 'not a plan', 50);
  return { store, plans: keptPlansIn(store, () => 1000) };
}

const names = async (plans: ReturnType<typeof keptPlansIn>) =>
  (await plans.list()).map(({ planId, plan, time }) => [planId, plan?.name ?? null, time]);

describe('plans kept in the browser', () => {
  it('are listed with their newest state; one that does not open is listed too', async () => {
    const { store, plans } = await withTwoPlans();
    expect(await names(plans)).toEqual([
      ['van', 'Van, later', 200],
      ['odd', null, 50],
    ]);
    store.close();
  });

  it('a copy is a plan of its own under the new name; the first stays byte for byte', async () => {
    const { store, plans } = await withTwoPlans();
    const before = await store.revisions('van');
    await plans.duplicate('van', 'Second van');
    const [copy] = await plans.list();
    expect(copy).toMatchObject({ time: 1000, plan: { name: 'Second van' } });
    expect(copy?.plan?.id).toBe(copy?.planId);
    expect(copy?.planId).not.toBe('van');
    expect(copy?.plan?.runs).toEqual(vanWithFeed().runs);
    expect(await store.revisions('van')).toEqual(before);
    await plans.duplicate('odd', 'Nothing to copy');
    expect(await plans.list()).toHaveLength(3);
    store.close();
  });

  it('a new name is a state of its own, after which the old one is still kept', async () => {
    const { store, plans } = await withTwoPlans();
    expect(await plans.rename('van', 'Blue van')).toBe(true);
    expect((await plans.list())[0]).toMatchObject({ planId: 'van', plan: { name: 'Blue van' } });
    expect((await store.revisions('van')).map(({ revision }) => revision)).toEqual([3, 2, 1]);
    expect(await plans.rename('odd', 'No name for that')).toBe(false);
    store.close();
  });

  it('a plan that is taken out is gone with all its states, and comes back with all of them', async () => {
    const { store, plans } = await withTwoPlans();
    const before = await store.revisions('van');
    const putBack = await plans.remove('van');
    expect((await plans.list()).map(({ planId }) => planId)).toEqual(['odd']);
    expect(await store.revisions('van')).toEqual([]);
    await putBack();
    expect(await store.revisions('van')).toEqual(before);
    store.close();
  });

  it('putting back never overwrites what another tab has saved since', async () => {
    const { store, plans } = await withTwoPlans();
    const putBack = await plans.remove('van');
    await store.saveRecord('van', 0, savePlan({ ...vanWithFeed(), id: 'van', name: 'From the other tab' }), 300);
    await putBack();
    const states = await store.revisions('van');
    expect(states.map(({ revision, time }) => [revision, time])).toEqual([
      [2, 200],
      [1, 300],
    ]);
    store.close();
  });

  it('a copy and another name leave what is proposed where it was', async () => {
    const { store, plans } = await withTwoPlans();
    const proposal = '[{"kind":"fitting"}]';
    await store.saveRecord('van', 2, savePlan({ ...vanWithFeed(), id: 'van', name: 'Van' }), 300, proposal);
    await plans.duplicate('van', 'Second van');
    await plans.rename('van', 'First van');
    const kept = (await store.listPlans()).filter(({ planId }) => planId !== 'odd');
    expect(kept.map((record) => record.proposal)).toEqual([proposal, proposal]);
    store.close();
  });
});
