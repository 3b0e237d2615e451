import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { launchBrowser, type OpenedPage, openPage } from '../support/browser.ts';
import { untilText } from '../support/reading.ts';
import { drawRoute } from './support/draw.ts';
import { KeyboardUser } from './support/keyboard.ts';
import { withoutIds } from './support/reading.ts';
import { close, openDialog, openList, openWhy, selectFirst } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';
import { typeRoute } from './support/type.ts';

/** The list beside the sketch: a plan can be built from it by keyboard alone, and it is the same plan. */
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

describe('a plan built from the list', () => {
  let typed = '';

  it('is typed by keyboard alone, and the accessibility checker finds nothing', async () => {
    opened = await openPage(browser, inject('pageUrl'), 'tablet', { hasTouch: false, isMobile: false });
    typed = await typeRoute(new KeyboardUser(opened.page));
    await untilText(opened.page, 'Provisional: 7 lengths to tape');
    expect(await axe(opened.page)).toEqual([]);
    opened.expectClean();
  });

  it('has the bytes of the plan drawn by touch, but for ids', async () => {
    opened = await openPage(browser, inject('pageUrl'), 'tablet');
    const drawn = await drawRoute(new TouchUser(opened));
    expect(withoutIds(typed)).toBe(withoutIds(drawn));
    opened.expectClean();
  });
});

describe.each(['tablet', 'phone'] as const)('the accessibility checker finds nothing: %s', (screen) => {
  const dialog = (button: Parameters<typeof openDialog>[1], title?: string) => async (user: TouchUser) => {
    if ((await user.page.getByRole('dialog').count()) > 0) await close(user, 'Close');
    await openDialog(user, button, title);
  };
  const STATES: readonly (readonly [string, (user: TouchUser) => Promise<void>])[] = [
    ['the first page', async () => undefined],
    ['the dialog for a new plan', dialog('New plan')],
    ['the settings', dialog('Settings')],
    ['opening a plan', dialog('Open', 'Open a plan')],
    ['the legend', dialog('Legend')],
    [
      'the list',
      async (user) => {
        await close(user, 'Close');
        await openList(user);
      },
    ],
    [
      'a reason',
      async (user) => {
        await close(user, 'Close the list');
        await openWhy(user, 'Main fuse');
      },
    ],
    [
      'the inspector of a fitting',
      async (user) => {
        await close(user, 'Close');
        await selectFirst(user, 'Amplifiers');
      },
    ],
    ['the inspector of a run', (user) => selectFirst(user, 'Runs')],
  ];

  it('in any state of the page', async () => {
    opened = await openPage(browser, inject('pageUrl'), screen);
    await untilText(opened.page, /\d to stop for/);
    const user = new TouchUser(opened);
    const found: Record<string, string[]> = {};
    for (const [state, bring] of STATES) {
      await bring(user);
      found[state] = await axe(opened.page);
    }
    expect(found).toEqual(Object.fromEntries(STATES.map(([state]) => [state, []])));
    opened.expectClean();
  });
});
