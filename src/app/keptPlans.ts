/** What can be done with plans that the browser keeps, beside opening them: copies, names, and the bin with a way back. */
import { newId } from '../plan/create.ts';
import { renamePlan } from '../plan/edits/renamePlan.ts';
import { openPlan } from '../plan/open.ts';
import { savePlan } from '../plan/save.ts';
import type { Plan } from '../plan/schema.ts';
import { readPlan } from '../storage/read.ts';
import type { Store } from '../storage/store.ts';

/** A plan kept in this browser; null where its newest state does not open. */
interface KeptPlan {
  planId: string;
  plan: Plan | null;
  /** Saved last, milliseconds since 1970. */
  time: number;
}

export interface KeptPlans {
  /** The last saved first. */
  list(): Promise<KeptPlan[]>;
  /** Keeps a copy under that name, beside the plan; nothing when the plan does not open. */
  duplicate(planId: string, name: string): Promise<void>;
  /** Answers whether the name was taken. */
  rename(planId: string, name: string): Promise<boolean>;
  /** Takes the plan out with all its states, and answers how to put it back. */
  remove(planId: string): Promise<() => Promise<void>>;
}

export function keptPlansIn(store: Store, now: () => number): KeptPlans {
  const newest = (planId: string) => readPlan(store, planId);
  return {
    async list() {
      const records = await store.listPlans();
      return records.map(({ planId, time, text }) => {
        const opened = openPlan(text);
        return { planId, time, plan: opened.ok ? opened.plan : null };
      });
    },
    async duplicate(planId, name) {
      const read = await newest(planId);
      if (read === null) return;
      const id = newId();
      await store.saveRecord(id, 0, savePlan(renamePlan({ ...read.plan, id }, name)), now(), read.proposal);
    },
    async rename(planId, name) {
      const read = await newest(planId);
      if (read === null) return false;
      const renamed = renamePlan(read.plan, name);
      // another tab may save in between: then its plan stands, under its own name
      return (await store.saveRecord(planId, read.newestRevision, savePlan(renamed), now(), read.proposal)).ok;
    },
    async remove(planId) {
      const records = await store.removePlan(planId);
      return () => store.restorePlan(records);
    },
  };
}

/** Where nothing is kept, nothing is listed. */
export const NO_KEPT_PLANS: KeptPlans = {
  list: async () => [],
  duplicate: async () => undefined,
  rename: async () => false,
  remove: async () => async () => undefined,
};
