import { runAct } from '../desk/acts/index.ts';
import type { Desk } from '../desk/desk.ts';
import { actForKey } from '../desk/keys.ts';

/** Command is Control on Apple keyboards, an iPad's included. */
const isApple = (navigatorName: string): boolean => /Mac|iPhone|iPad|iPod/.test(navigatorName);

/**
 * Runs acts by their keys, first by those that were pressed before it was there to listen. Whoever handles a key first
 * and prevents its default keeps it. Answers how to stop.
 */
export function listenForKeys(desk: Desk, page: Window, pressed: readonly KeyboardEvent[] = []): () => void {
  const apple = isApple(page.navigator.userAgent);
  const onKeyDown = (event: KeyboardEvent) => {
    const act = actForKey(event, apple);
    if (act !== null && runAct(desk, act)) event.preventDefault();
  };
  for (const event of pressed) onKeyDown(event);
  page.addEventListener('keydown', onKeyDown);
  return () => page.removeEventListener('keydown', onKeyDown);
}
