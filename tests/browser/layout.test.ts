import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from 'vitest';
import { launchBrowser, type OpenedPage, openPage, type ViewportName } from '../support/browser.ts';
import { layoutFaults } from '../support/layout.ts';
import { untilText } from '../support/reading.ts';
import { close, openFile, openList, selectFirst } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/**
 * On every screen nothing is cut off or lies on something else, nothing scrolls sideways, and every control can be hit
 * by a finger: with the example, and with names as long as a plan may hold.
 */
let browser: Browser;
let opened: OpenedPage | undefined;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());
afterEach(async () => {
  await opened?.close();
  opened = undefined;
});

const LONGEST_NAME = 200;

/** Every name of a plan made as long as it may be: one without a single space, the next of many words. */
function withLongNames(text: string): string {
  let count = 0;
  return text.replace(/"name": "([^"]*)"/g, (_all, name: string) => {
    count += 1;
    const filler = count % 2 === 0 ? 'Wwm' : ' rear quarter';
    return `"name": "${`${count}${name}`.padEnd(LONGEST_NAME, filler)}"`;
  });
}

async function example(): Promise<string> {
  return (await fetch(new URL('demo.plan.json', inject('pageUrl')))).text();
}

const PLANS = [
  { plan: 'the example', prepare: async () => undefined },
  {
    plan: 'names of 200 characters',
    prepare: async (user: TouchUser) => {
      await openFile(user, 'long.plan.json', withLongNames(await example()));
      await untilText(user.page, /is open\.$/m);
      await user.tap(user.button('Dismiss'));
    },
  },
] as const;

const STATES: readonly (readonly [string, (user: TouchUser) => Promise<void>])[] = [
  ['nothing selected', async () => undefined],
  ['the list open', openList],
  [
    'a fitting selected',
    async (user) => {
      await close(user, 'Close the list');
      await selectFirst(user, 'Amplifiers');
    },
  ],
  ['a run selected', (user) => selectFirst(user, 'Runs')],
  ['the list open beside it', openList],
];

const SCREENS: readonly ViewportName[] = ['tablet', 'tabletPortrait', 'phone', 'projector'];

describe.each(SCREENS)('%s', (screen) => {
  it.each(PLANS)('$plan: all in sight, nothing on anything else, fit for fingers', async ({ prepare }) => {
    // the finger tests every screen alike: a projector is hung beside a touch screen as well
    opened = await openPage(browser, inject('pageUrl'), screen, { hasTouch: true });
    const user = new TouchUser(opened);
    await untilText(user.page, /to stop for|to fix|Provisional/);
    await prepare(user);
    const found: Record<string, string[]> = {};
    const wanted: Record<string, string[]> = {};
    for (const [state, bring] of STATES) {
      await bring(user);
      found[state] = await layoutFaults(user.page);
      wanted[state] = [];
    }
    expect(found).toEqual(wanted);
    opened.expectClean();
  });
});
