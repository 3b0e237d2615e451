/** Asking for the fields of a thing, not only picking it out: on a small screen they lie in a sheet that is pulled up. */
import type { Desk, Selection } from './desk.ts';
import { select } from './selection.ts';

type Show = () => void;

const shows = new WeakMap<Desk, Show>();

/** Registers what brings the inspector into sight; answers how to stop. */
export function showInspectorBy(desk: Desk, show: Show): () => void {
  shows.set(desk, show);
  return () => {
    if (shows.get(desk) === show) shows.delete(desk);
  };
}

/** Selects a thing and brings its fields into sight. */
export function inspect(desk: Desk, selection: Selection): void {
  select(desk, selection);
  if (desk.getState().selection !== null) shows.get(desk)?.();
}
