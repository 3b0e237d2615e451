import './memoryDatabase.ts';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { templatesIn } from '../../src/app/templates.ts';
import type { Outline } from '../../src/plan/schema.ts';
import { openStore } from '../../src/storage/store.ts';

const KART: Outline = {
  kind: 'own',
  ...{ lengthM: 2, widthM: 1.2, heightM: 1, bayM: 0.5, cabM: null },
  edge: [
    { xM: 0, yM: 0.4 },
    { xM: 2, yM: 0 },
    { xM: 2, yM: 1.2 },
  ],
};

describe('templates', () => {
  it('are kept by name, the last first, and taken out with a way back', async () => {
    const store = await openStore();
    let time = 0;
    const templates = templatesIn(store, () => ++time);
    expect(await templates.keep('Kart', KART, true)).toBe(true);
    expect(await templates.keep('Trailer', { ...KART, lengthM: 3 }, false)).toBe(true);
    const [trailer, kart] = await templates.list();
    expect([trailer?.name, kart?.name, kart?.outline]).toEqual(['Trailer', 'Kart', KART]);
    expect([trailer?.mirrored, kart?.mirrored]).toEqual([false, true]);
    const putBack = await templates.remove(trailer?.id ?? '');
    expect((await templates.list()).map(({ name }) => name)).toEqual(['Kart']);
    await putBack();
    expect((await templates.list()).map(({ name }) => name)).toEqual(['Trailer', 'Kart']);
    store.close();
  });

  it('that are damaged are left out; a store that is closed keeps none, and says so', async () => {
    const store = await openStore();
    await store.putTemplate({ id: 'odd', name: 'Odd', time: 1, outline: { kind: 'own', edge: 'none' } });
    const templates = templatesIn(store, () => 2);
    expect(await templates.list()).toEqual([]);
    store.close();
    expect(await templates.keep('Kart', KART, false)).toBe(false);
  });

  it('of before the side was told are left-hand drive', async () => {
    const store = await openStore();
    await store.putTemplate({ id: 'old', name: 'Old', time: 9, outline: KART });
    const [old] = await templatesIn(store, () => 9).list();
    expect(old).toEqual({ id: 'old', name: 'Old', outline: KART, mirrored: false });
    store.close();
  });

  it('come to a database of the first layout, which keeps its plans', async () => {
    const first = await openDB('feedrun', 1, {
      upgrade(fresh) {
        fresh.createObjectStore('plans', { keyPath: ['planId', 'revision'] });
        fresh.createObjectStore('desk', { keyPath: 'key' });
      },
    });
    await first.put('plans', { planId: 'a', revision: 3, time: 9, text: 'kept' });
    await first.put('desk', { key: 'last', planId: 'a' });
    first.close();
    const store = await openStore();
    expect(await store.latest('a')).toEqual({ planId: 'a', revision: 3, time: 9, text: 'kept' });
    expect(await store.getLast()).toBe('a');
    expect(await store.saveRecord('a', 3, 'more', 10)).toEqual({ ok: true, revision: 4 });
    expect(await store.listTemplates()).toEqual([]);
    store.close();
  });
});
