import { openPlan } from '../plan/open.ts';
import type { Plan } from '../plan/schema.ts';
import type { Store } from './store.ts';

/** A plan read back, and what a later save has to know about it. */
export interface ReadPlan {
  plan: Plan;
  planId: string;
  /** The newest revision in the store, damaged or not. */
  newestRevision: number;
  /** The text that was opened. */
  text: string;
  /** What was proposed for it, as text that nobody has looked at yet; empty where nothing was. */
  proposal: string;
  /** When the opened state was saved, milliseconds since 1970. */
  time: number;
  /** A newer state was damaged. */
  isOlder: boolean;
}

/** The newest state of a plan that opens; null when none is kept or none opens. Damaged records stay where they are. */
export async function readPlan(store: Store, planId: string): Promise<ReadPlan | null> {
  const records = await store.revisions(planId);
  const newestRevision = records[0]?.revision ?? 0;
  for (const { text, proposal = '', time, revision } of records) {
    const opened = openPlan(text);
    if (opened.ok) {
      const isOlder = revision !== newestRevision;
      return { plan: opened.plan, planId, newestRevision, text, proposal, time, isOlder };
    }
  }
  return null;
}
