import './memoryDatabase.ts';
import fc from 'fast-check';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { openStore, REVISIONS_KEPT } from '../../src/storage/store.ts';

describe('the store', () => {
  it('saves every state as a record of its own, newest first', async () => {
    const store = await openStore();
    expect(await store.saveRecord('a', 0, 'one', 100)).toEqual({ ok: true, revision: 1 });
    expect(await store.saveRecord('a', 1, 'two', 200)).toEqual({ ok: true, revision: 2 });
    expect(await store.latest('a')).toEqual({ planId: 'a', revision: 2, time: 200, text: 'two' });
    expect((await store.revisions('a')).map(({ text }) => text)).toEqual(['two', 'one']);
    store.close();
  });

  it('keeps plans apart, whatever their ids begin with', async () => {
    const store = await openStore();
    for (const planId of ['a', 'aa', 'A', 'b', '-', '_z']) await store.saveRecord(planId, 0, `of ${planId}`, 1);
    for (const planId of ['a', 'aa', 'A', 'b', '-', '_z']) {
      expect((await store.revisions(planId)).map(({ text }) => text)).toEqual([`of ${planId}`]);
    }
    expect(await store.latest('ab')).toBeNull();
    store.close();
  });

  it(`keeps the last ${REVISIONS_KEPT} states of each plan`, async () => {
    const store = await openStore();
    await store.saveRecord('other', 0, 'untouched', 1);
    for (let n = 0; n < REVISIONS_KEPT + 7; n += 1) await store.saveRecord('a', n, `${n + 1}`, n);
    const kept = (await store.revisions('a')).map(({ revision }) => revision);
    expect(kept).toEqual(Array.from({ length: REVISIONS_KEPT }, (_, n) => REVISIONS_KEPT + 7 - n));
    expect(await store.latest('other')).not.toBeNull();
    store.close();
  });

  it('never overwrites: a save that does not follow the newest record is told that record', async () => {
    const store = await openStore();
    await store.saveRecord('a', 0, 'mine', 1);
    await store.saveRecord('a', 1, 'theirs', 2);
    expect(await store.saveRecord('a', 1, 'mine again', 3)).toEqual({
      ok: false,
      latest: { planId: 'a', revision: 2, time: 2, text: 'theirs' },
    });
    expect(await store.saveRecord('a', 0, 'as if new', 3)).toMatchObject({ ok: false });
    expect((await store.revisions('a')).map(({ text }) => text)).toEqual(['theirs', 'mine']);
    store.close();
  });

  it('of two saves at once after one record lands one, in any order', async () => {
    const store = await openStore();
    const other = await openStore();
    await store.saveRecord('a', 0, 'first', 1);
    const results = await Promise.all([store.saveRecord('a', 1, 'mine', 2), other.saveRecord('a', 1, 'theirs', 2)]);
    expect(results.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect((await store.revisions('a')).length).toBe(2);
    store.close();
    other.close();
  });

  it('lists the newest state of every plan, the last saved first', async () => {
    const store = await openStore();
    const saves = fc.sample(fc.constantFrom('a', 'b', 'c', 'aa'), { numRuns: 60, seed: 7 });
    const newest = new Map<string, number>();
    for (const [time, planId] of saves.entries()) {
      await store.saveRecord(planId, newest.get(planId) ?? 0, `${time}`, time);
      newest.set(planId, (newest.get(planId) ?? 0) + 1);
    }
    const listed = await store.listPlans();
    expect(listed.map(({ planId, revision }) => [planId, revision]).sort()).toEqual([...newest].sort());
    const times = listed.map(({ time }) => time);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    expect(times[0]).toBe(saves.length - 1);
    store.close();
  });

  it('remembers the last plan, also when opened again', async () => {
    const store = await openStore();
    expect(await store.getLast()).toBeNull();
    await store.setLast('a');
    await store.setLast('b');
    store.close();
    const again = await openStore();
    expect(await again.getLast()).toBe('b');
    again.close();
  });

  it('lets a newer page change the layout, and its own saves then fail', async () => {
    const store = await openStore();
    const newer = await openDB('feedrun', 3);
    await expect(store.saveRecord('a', 0, 'one', 1)).rejects.toThrow();
    await expect(openStore()).rejects.toThrow();
    newer.close();
  });
});
