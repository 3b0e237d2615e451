/** Once per run of the browser tests: build the page, serve it on a free port, and find the browser. */
import type { TestProject } from 'vitest/node';
import { buildPage, servePage } from '../../src/cli/page.ts';
import { findChromium } from '../../src/cli/setup.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    pageUrl: string;
  }
}

/** Apart from dist/, so that a page being served by `npm start` is not changed under its user. */
const OUT_DIR = 'node_modules/.cache/feedrun/page';

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const chromium = findChromium(process.env);
  if (chromium) process.env.CHROME_PATH = chromium;
  await buildPage(OUT_DIR);
  const page = await servePage(OUT_DIR, '127.0.0.1', 0);
  project.provide('pageUrl', page.url);
  return () => page.close();
}
