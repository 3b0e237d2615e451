/**
 * Plans kept in this browser. Every save is a record of its own under [planId, revision], so that many plans, older
 * states and two tabs side by side need no other layout.
 */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

const DATABASE = 'feedrun';
/** 2: with templates. */
const DATABASE_VERSION = 2;

/** Saved states kept of each plan; older ones go as new ones come. */
export const REVISIONS_KEPT = 20;

interface PlanRecord {
  planId: string;
  /** Counts up from 1. */
  revision: number;
  /** When it was saved, milliseconds since 1970. */
  time: number;
  text: string;
  /** What was proposed for the plan and no part of it yet, as text; missing where nothing was. */
  proposal?: string;
}

/** An outline kept by name. What the browser gives back is held against the schema before it is used. */
interface TemplateRecord {
  id: string;
  name: string;
  /** When it was kept, milliseconds since 1970. */
  time: number;
  outline: unknown;
  /** Right-hand drive; one kept before this was told is left-hand. */
  mirrored?: boolean;
}

interface Layout extends DBSchema {
  plans: { key: [string, number]; value: PlanRecord };
  templates: { key: string; value: TemplateRecord };
  desk: { key: string; value: { key: string; planId: string } };
}

/** A save lands, or another tab has saved in between and its newest record is told. */
type SaveResult = { ok: true; revision: number } | { ok: false; latest: PlanRecord };

export interface Store {
  /** Saves the revision after `after`, the newest the caller has read or written (0: none). Never overwrites. */
  saveRecord(planId: string, after: number, text: string, time: number, proposal?: string): Promise<SaveResult>;
  /** Every kept state of a plan, newest first. */
  revisions(planId: string): Promise<PlanRecord[]>;
  latest(planId: string): Promise<PlanRecord | null>;
  /** The newest state of every plan, the last saved first. */
  listPlans(): Promise<PlanRecord[]>;
  /** Takes every state of a plan out, and answers them: `restorePlan` is the way back. */
  removePlan(planId: string): Promise<PlanRecord[]>;
  /** Puts states back that were taken out; one saved since under the same revision stays. */
  restorePlan(records: readonly PlanRecord[]): Promise<void>;
  /** Which plan the next visit opens. */
  setLast(planId: string): Promise<void>;
  getLast(): Promise<string | null>;
  /** Templates, the last kept first. */
  listTemplates(): Promise<TemplateRecord[]>;
  putTemplate(template: TemplateRecord): Promise<void>;
  removeTemplate(id: string): Promise<void>;
  close(): void;
}

/** Rejects where the browser keeps nothing: a private window, storage switched off, a newer page's database. */
export async function openStore(): Promise<Store> {
  const database = await openDB<Layout>(DATABASE, DATABASE_VERSION, {
    upgrade(found, oldVersion) {
      if (oldVersion < 1) {
        found.createObjectStore('plans', { keyPath: ['planId', 'revision'] });
        found.createObjectStore('desk', { keyPath: 'key' });
      }
      // what an earlier page kept stays as it is
      if (oldVersion < 2) found.createObjectStore('templates', { keyPath: 'id' });
    },
    // a newer page in another tab wants to change the layout: let it; saves here then fail, and say so
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });
  return storeOn(database);
}

/** All revisions of one plan: a shorter key array sorts before every longer one. */
const revisionsOf = (planId: string) => IDBKeyRange.bound([planId], [planId, Number.POSITIVE_INFINITY]);

function storeOn(database: IDBPDatabase<Layout>): Store {
  return {
    async saveRecord(planId, after, text, time, proposal = '') {
      const transaction = database.transaction('plans', 'readwrite');
      const latest = (await transaction.store.openCursor(revisionsOf(planId), 'prev'))?.value;
      if (latest !== undefined && latest.revision !== after) {
        await transaction.done;
        return { ok: false, latest };
      }
      const revision = after + 1;
      const old = IDBKeyRange.bound([planId], [planId, revision - REVISIONS_KEPT]);
      await Promise.all([
        transaction.store.add({ planId, revision, time, text, ...(proposal !== '' && { proposal }) }),
        transaction.store.delete(old),
        transaction.done,
      ]);
      return { ok: true, revision };
    },
    async revisions(planId) {
      return (await database.getAll('plans', revisionsOf(planId))).reverse();
    },
    async latest(planId) {
      const transaction = database.transaction('plans');
      return (await transaction.store.openCursor(revisionsOf(planId), 'prev'))?.value ?? null;
    },
    async listPlans() {
      const found: PlanRecord[] = [];
      let cursor = await database.transaction('plans').store.openCursor(null, 'prev');
      while (cursor !== null) {
        found.push(cursor.value);
        // on to the newest record of the plan before
        cursor = await cursor.continue([cursor.value.planId, Number.NEGATIVE_INFINITY]);
      }
      return found.sort((a, b) => b.time - a.time);
    },
    async removePlan(planId) {
      const transaction = database.transaction('plans', 'readwrite');
      const records = await transaction.store.getAll(revisionsOf(planId));
      await Promise.all([transaction.store.delete(revisionsOf(planId)), transaction.done]);
      return records;
    },
    async restorePlan(records) {
      const transaction = database.transaction('plans', 'readwrite');
      for (const record of records) {
        const there = await transaction.store.get([record.planId, record.revision]);
        if (there === undefined) await transaction.store.add(record);
      }
      await transaction.done;
    },
    async setLast(planId) {
      await database.put('desk', { key: 'last', planId });
    },
    async getLast() {
      return (await database.get('desk', 'last'))?.planId ?? null;
    },
    async listTemplates() {
      return (await database.getAll('templates')).sort((a, b) => b.time - a.time);
    },
    async putTemplate(template) {
      await database.put('templates', template);
    },
    async removeTemplate(id) {
      await database.delete('templates', id);
    },
    close: () => database.close(),
  };
}
