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

/** The rules whose outcome hangs on colours: all else is the same in every light. */
export const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * What the accessibility checker finds against the page as it stands, one line each; none is the wanted answer.
 * While a modal dialog is open only what is in it can be reached, so only that is looked at.
 * All rules, unless `rules` names some.
 */
export async function axe(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(SOURCE);
  const options: RunOptions = {
    resultTypes: ['violations'],
    ...(rules === undefined ? {} : { runOnly: { type: 'rule', values: [...rules] } }),
  };
  const results = await page.evaluate(
    (how) => window.axe?.run(document.querySelector('dialog:modal') ?? document, how),
    options,
  );
  if (results === undefined) throw new Error('The accessibility checker did not load.');
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
  );
}
