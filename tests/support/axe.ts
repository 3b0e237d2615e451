import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

declare global {
  interface Window {
    axe: { run(context: Document, options: RunOptions): Promise<AxeResults> };
  }
}

const SOURCE = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');

/** What the accessibility checker finds against the page as it stands, one line each; none is the wanted answer. */
export async function axe(page: Page): Promise<string[]> {
  await page.evaluate(SOURCE);
  const results = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
}
