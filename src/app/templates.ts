/** Outlines that the user keeps by name, to begin other plans with. */
import { newId } from '../plan/create.ts';
import { openOutline } from '../plan/openOutline.ts';
import type { Outline } from '../plan/schema.ts';
import type { Store } from '../storage/store.ts';

interface Template {
  id: string;
  name: string;
  outline: Outline;
  mirrored: boolean;
}

export interface Templates {
  /** The last kept first; what does not open is left out. */
  list(): Promise<Template[]>;
  /** Answers whether it is kept. */
  keep(name: string, outline: Outline, mirrored: boolean): Promise<boolean>;
  /** Answers how to put it back. */
  remove(id: string): Promise<() => Promise<void>>;
}

export function templatesIn(store: Store, now: () => number): Templates {
  return {
    async list() {
      const records = await store.listTemplates();
      return records.flatMap(({ id, name, outline, mirrored }) => {
        const opened = openOutline(outline);
        return opened === null ? [] : [{ id, name, outline: opened, mirrored: mirrored === true }];
      });
    },
    async keep(name, outline, mirrored) {
      try {
        await store.putTemplate({ id: newId(), name, time: now(), outline, mirrored });
        return true;
      } catch {
        // the browser's room is full, or it keeps nothing any more
        return false;
      }
    },
    async remove(id) {
      const gone = (await store.listTemplates()).find((record) => record.id === id);
      await store.removeTemplate(id);
      return async () => {
        if (gone !== undefined) await store.putTemplate(gone);
      };
    },
  };
}

/** Where nothing is kept. */
export const NO_TEMPLATES: Templates = {
  list: async () => [],
  keep: async () => false,
  remove: async () => async () => undefined,
};
