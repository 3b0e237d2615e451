/** What a page shows and what it keeps, read from outside. */
import type { Page } from 'playwright-core';

/** Waits until what was asked for has been drawn: two animation frames, the second begins after the first's paint. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
}

/** The text a person reads on the page now. */
export async function textOf(page: Page): Promise<string> {
  return page.evaluate(() => document.body.innerText);
}

/** Waits until the page's text has `wanted` in it, and answers the text; says what it read instead when it never comes. */
export async function untilText(page: Page, wanted: string | RegExp, timeoutMs = 5_000): Promise<string> {
  const pattern = typeof wanted === 'string' ? wanted.replace(/[.*+?^${}()|[\]\\]/g, '\\$&') : wanted.source;
  const flags = typeof wanted === 'string' ? '' : wanted.flags;
  try {
    await page.waitForFunction(
      ([source, how]) => new RegExp(source, how).test(document.body.innerText),
      [pattern, flags] as const,
      { timeout: timeoutMs },
    );
  } catch {
    throw new Error(`The page never said ${String(wanted)}. It says:\n${await textOf(page)}`);
  }
  return textOf(page);
}

/**
 * The records of one store of the page's browser database, as they are stored; none when there is no such database
 * yet (opening it from here would make an empty one, and the page would then miss its own first set-up).
 */
export async function readRecords(page: Page, database: string, store: string): Promise<Record<string, unknown>[]> {
  return page.evaluate(
    async ([databaseName, storeName]) => {
      const known = await indexedDB.databases();
      if (!known.some(({ name }) => name === databaseName)) return [];
      return new Promise<Record<string, unknown>[]>((resolve, reject) => {
        const opening = indexedDB.open(databaseName);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const open = opening.result;
          if (!open.objectStoreNames.contains(storeName)) {
            open.close();
            resolve([]);
            return;
          }
          const asking = open.transaction(storeName, 'readonly').objectStore(storeName).getAll();
          asking.onerror = () => reject(asking.error);
          asking.onsuccess = () => {
            open.close();
            resolve(asking.result);
          };
        };
      });
    },
    [database, store] as const,
  );
}
