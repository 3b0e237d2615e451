import { afterEach, describe, expect, it, vi } from 'vitest';
import { openTabs, type Saved, type Tabs } from '../../src/storage/tabs.ts';

const open: Tabs[] = [];
const tab = () => {
  const tabs = openTabs();
  open.push(tabs);
  return tabs;
};

afterEach(() => {
  for (const tabs of open.splice(0)) tabs.close();
  vi.unstubAllGlobals();
});

describe('tabs', () => {
  it('hear what others saved, not what they saved themselves', async () => {
    const [one, two] = [tab(), tab()];
    const heard: [string, Saved][] = [];
    one.onSaved((saved) => heard.push(['one', saved]));
    two.onSaved((saved) => heard.push(['two', saved]));
    one.tell({ planId: 'plan-1', revision: 3 });
    await vi.waitFor(() => expect(heard).toEqual([['two', { planId: 'plan-1', revision: 3 }]]));
  });

  it('take no notice of what is no such message', async () => {
    const one = tab();
    const heard: Saved[] = [];
    one.onSaved((saved) => heard.push(saved));
    const stranger = new BroadcastChannel('feedrun-plans');
    for (const message of [null, 'x', { planId: 1, revision: 2 }, { planId: 'a' }, { planId: 'a', revision: 1 }]) {
      stranger.postMessage(message);
    }
    await vi.waitFor(() => expect(heard).toEqual([{ planId: 'a', revision: 1 }]));
    stranger.close();
  });

  it('are deaf to each other, and do not fail, without a channel', () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    const one = tab();
    expect(() => one.tell({ planId: 'a', revision: 1 })).not.toThrow();
  });
});
