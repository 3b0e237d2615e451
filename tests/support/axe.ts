import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

declare global {
  interface Window {
    axe?: { run(context: Document | Element, options: RunOptions): Promise<AxeResults> };
  }
}

const SOURCE = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');

/**
 * What the accessibility checker finds against the page as it stands, one line each; none is the wanted answer.
 * While a modal dialog is open only what is in it can be reached, so only that is looked at.
 */
export async function axe(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(SOURCE);
  const results = await page.evaluate(() =>
    window.axe?.run(document.querySelector('dialog:modal') ?? document, { resultTypes: ['violations'] }),
  );
  if (results === undefined) throw new Error('The accessibility checker did not load.');
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
}
