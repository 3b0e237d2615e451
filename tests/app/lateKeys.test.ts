import { fireEvent } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keepKeys } from '../../src/app/lateKeys.ts';
import * as shortcuts from '../../src/app/shortcuts.ts';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { commit } from '../../src/desk/edit.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { emptyVan } from '../desk/plans.ts';

let desk: Desk;
let stop: () => void;
/** What each fetch that was begun waits for, the first one first. */
let fetches: { come: () => Promise<void>; fail: () => Promise<void> }[];

const settled = () => new Promise<void>((done) => setTimeout(done));
const undoKey = () => fireEvent.keyDown(document.body, { key: 'z', ctrlKey: true });
const name = () => desk.getState().plan.name;

beforeEach(() => {
  desk = createDesk(emptyVan(), { isExample: false, bigFingers: false });
  commit(desk, 'rename', (plan) => renamePlan(plan, 'One'));
  commit(desk, 'rename', (plan) => renamePlan(plan, 'Two'));
  fetches = [];
  stop = keepKeys(desk, window, () => {
    let [resolve, reject] = [(_: typeof shortcuts) => {}, (_: Error) => {}];
    const fetched = new Promise<typeof shortcuts>((done, failed) => {
      [resolve, reject] = [done, failed];
    });
    fetches.push({
      come: () => {
        resolve(shortcuts);
        return settled();
      },
      fail: () => {
        reject(new TypeError('no such file'));
        return settled();
      },
    });
    return fetched;
  });
});
afterEach(() => stop());

describe('keys pressed before what they do has been fetched', () => {
  it('do it in order when it comes, once each, and the later ones at once', async () => {
    undoKey();
    expect(name()).toBe('Two');
    await fetches[0]?.come();
    expect(name()).toBe('One');
    undoKey();
    expect(name()).toBe('Van');
    expect(fetches).toHaveLength(1);
  });

  it('keep an order that matters', async () => {
    undoKey();
    undoKey();
    fireEvent.keyDown(document.body, { key: 'Z', ctrlKey: true, shiftKey: true });
    await fetches[0]?.come();
    expect(name()).toBe('One');
  });

  it('fetch it again where that failed, say so, and are not lost', async () => {
    await fetches[0]?.fail();
    // nobody has pressed a key: there is nothing to say yet
    expect(desk.getState().message).toBeNull();
    undoKey();
    expect(fetches).toHaveLength(2);
    await fetches[1]?.fail();
    expect(desk.getState().message?.id).toBe('handMissing');
    undoKey();
    await fetches[2]?.come();
    expect(name()).toBe('Van');
  });
});
