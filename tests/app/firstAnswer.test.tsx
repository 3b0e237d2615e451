import { getConfig } from '@testing-library/react';
import { createRoot } from 'react-dom/client';
import { expect, it, vi } from 'vitest';
import { App } from '../../src/app/App.tsx';
import { createKeeping, newSaveState } from '../../src/app/keeping.ts';
import { createDesk } from '../../src/desk/desk.ts';
import { emptyVan } from '../desk/plans.ts';

/** The assessment arrives while the page is rendered for the first time: who asks first waits, who asks next has it. */
const load = vi.hoisted(() => ({ isAsked: false, arrive: () => {} }));
vi.mock('../../src/desk/answer.ts', async (original) => {
  const room = await original<typeof import('../../src/desk/answer.ts')>();
  await room.loadAssess();
  const awaited = new Promise<void>((resolve) => {
    load.arrive = resolve;
  });
  // what React writes on a promise that it has seen settle
  const settled = Object.assign(Promise.resolve(), { status: 'fulfilled', value: undefined });
  const loadAssess = () => {
    const promise = load.isAsked ? settled : awaited;
    load.isAsked = true;
    return promise;
  };
  return { ...room, loadAssess };
});

/** The page's own parts are loaded on the way. */
const SLOW_MS = 10_000;

it(
  'the verdict never stands on the page before the sketch does: a finger would touch nothing',
  async () => {
    const desk = createDesk(emptyVan(), { isExample: false, bigFingers: false });
    const keeping = createKeeping(desk, null, newSaveState(), document);
    const place = document.body.appendChild(document.createElement('div'));
    const seen: string[] = [];
    const look = () => {
      const parts = [place.querySelector('.answer h2') && 'verdict', place.querySelector('.sketch') && 'sketch'];
      const now = parts.filter(Boolean).join(' and ');
      if (seen.at(-1) !== now) seen.push(now);
    };
    const watching = new MutationObserver(look);
    watching.observe(place, { childList: true, subtree: true });

    // as the page itself starts: rendered when the browser has time, not held back and flushed by a test
    await getConfig().asyncWrapper(async () => {
      const root = createRoot(place);
      root.render(<App desk={desk} store={keeping} />);
      load.arrive();
      await vi.waitFor(() => expect(seen.at(-1)).toBe('verdict and sketch'), SLOW_MS);
      root.unmount();
    });
    watching.disconnect();
    place.remove();
    expect(seen).not.toContain('verdict');
  },
  2 * SLOW_MS,
);
