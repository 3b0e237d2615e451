import './memoryDatabase.ts';
import { describe, expect, it } from 'vitest';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { savePlan } from '../../src/plan/save.ts';
import { readPlan } from '../../src/storage/read.ts';
import { openStore } from '../../src/storage/store.ts';
import { emptyVan } from '../desk/plans.ts';

const text = (name: string) => savePlan(renamePlan(emptyVan(), name));

describe('reading a plan back', () => {
  it('opens its newest state', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, text('One'), 10);
    await store.saveRecord('plan-1', 1, text('Two'), 20);
    const read = await readPlan(store, 'plan-1');
    expect(read).toMatchObject({ planId: 'plan-1', newestRevision: 2, time: 20, isOlder: false, text: text('Two') });
    expect(read?.plan.name).toBe('Two');
    store.close();
  });

  it('opens the newest state that is whole, and says it is older', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, text('One'), 10);
    await store.saveRecord('plan-1', 1, text('Two'), 20);
    await store.saveRecord('plan-1', 2, text('Three').slice(0, 200), 30);
    await store.saveRecord('plan-1', 3, '', 40);
    const read = await readPlan(store, 'plan-1');
    expect(read?.plan.name).toBe('Two');
    expect(read).toMatchObject({ newestRevision: 4, time: 20, isOlder: true });
    expect(await store.revisions('plan-1')).toHaveLength(4);
    store.close();
  });

  it('answers null when nothing is kept or nothing opens', async () => {
    const store = await openStore();
    await store.saveRecord('plan-1', 0, '{"format":"something else"}', 10);
    expect(await readPlan(store, 'plan-1')).toBeNull();
    expect(await readPlan(store, 'plan-2')).toBeNull();
    store.close();
  });
});
