/**
 * Keeps the focus in a place whose controls come and go with what can be done: when the one that has it goes, the place
 * itself has it, and the next Tab leads to what came instead. Answers how to stop.
 */
export function keepFocus(place: HTMLElement): () => void {
  let held: Element | null = null;
  const take = ({ target }: FocusEvent) => {
    held = target instanceof Element ? target : null;
  };
  const leave = ({ target }: FocusEvent) => {
    // some browsers say so too of what is about to be taken away
    queueMicrotask(() => {
      if (held === target && held?.isConnected) held = null;
    });
  };
  const changes = new MutationObserver(() => {
    if (held === null || held.isConnected) return;
    held = null;
    if (document.activeElement === document.body) place.focus({ preventScroll: true });
  });
  changes.observe(place, { childList: true, subtree: true });
  place.addEventListener('focusin', take);
  place.addEventListener('focusout', leave);
  return () => {
    changes.disconnect();
    place.removeEventListener('focusin', take);
    place.removeEventListener('focusout', leave);
  };
}
