/** Keys from the start, while what they do comes after the first picture. */
import type { Desk } from '../desk/desk.ts';
import { loadPart } from '../desk/latePart.ts';
import { say } from './keeping.ts';

const fetchShortcuts = () => loadPart(() => import('./shortcuts.ts'));

/**
 * Keeps the keys that are pressed until what runs them has come. What failed to come is tried again at the next key.
 * Answers how to stop.
 */
export function keepKeys(desk: Desk, page: Window, fetch: typeof fetchShortcuts = fetchShortcuts): () => void {
  const pressed: KeyboardEvent[] = [];
  let isFetching = false;
  const fetchIt = async () => {
    isFetching = true;
    const shortcuts = await fetch().catch(() => null);
    isFetching = false;
    if (shortcuts !== null) {
      stop();
      stop = shortcuts.listenForKeys(desk, page, pressed);
    } else if (pressed.length > 0) {
      say(desk, { id: 'handMissing', params: {} });
    }
  };
  const keep = (event: KeyboardEvent) => {
    pressed.push(event);
    if (!isFetching) void fetchIt();
  };
  let stop = () => page.removeEventListener('keydown', keep);
  page.addEventListener('keydown', keep);
  void fetchIt();
  return () => stop();
}
