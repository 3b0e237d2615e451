/** Tabs of one browser tell each other what they saved. */
const CHANNEL = 'feedrun-plans';

export interface Saved {
  planId: string;
  revision: number;
}

export interface Tabs {
  tell(saved: Saved): void;
  /** Listens to the other tabs, never to this one. */
  onSaved(listener: (saved: Saved) => void): void;
  close(): void;
}

function isSaved(data: unknown): data is Saved {
  if (typeof data !== 'object' || data === null || !('planId' in data) || !('revision' in data)) return false;
  return typeof data.planId === 'string' && typeof data.revision === 'number';
}

/** Without a channel the tabs are deaf to each other; saving still never overwrites. */
export function openTabs(): Tabs {
  if (typeof BroadcastChannel === 'undefined') {
    return { tell: () => undefined, onSaved: () => undefined, close: () => undefined };
  }
  const channel = new BroadcastChannel(CHANNEL);
  return {
    tell: (saved) => channel.postMessage(saved),
    onSaved: (listener) => {
      channel.addEventListener('message', (event: MessageEvent<unknown>) => {
        if (isSaved(event.data)) listener(event.data);
      });
    },
    close: () => channel.close(),
  };
}
