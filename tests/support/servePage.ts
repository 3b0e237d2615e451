/** Once per run of the browser tests: build the page, serve it on a free port, and find the browser. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { buildPage, servePage } from '../../src/cli/page.ts';
import { findChromium } from '../../src/cli/setup.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    pageUrl: string;
  }
}

/**
 * Apart from dist/, so that a page being served by `npm start` is not changed under its user, and one of its own for
 * each run, so that two runs at once do not change each other's.
 */
const OUT_DIR = `node_modules/.cache/feedrun/page-${process.pid}`;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const chromium = findChromium(process.env);
  if (chromium) process.env.CHROME_PATH = chromium;
  await buildPage(OUT_DIR);
  const page = await servePage(OUT_DIR, '127.0.0.1', 0);
  project.provide('pageUrl', page.url);
  return async () => {
    await page.close();
    rmSync(join(ROOT, OUT_DIR), { recursive: true, force: true });
  };
}
