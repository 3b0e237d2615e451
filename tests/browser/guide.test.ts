import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { launchBrowser, type OpenedPage, openPage, VIEWPORTS } from '../support/browser.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { TouchUser } from './support/touch.ts';

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

it('a first plan step by step, left at any moment, and trade words explained in place', async () => {
  opened = await openPage(browser, inject('pageUrl'), 'tablet');
  const { page, finger } = opened;
  const user = new TouchUser(opened);
  await untilText(page, /\d to stop for/);
  await user.tap(user.button('Show me'));
  const card = page.getByRole('complementary', { name: 'First plan' });
  const title = card.getByRole('heading');
  await title.filter({ hasText: 'Step 1 of 7' }).waitFor();
  expect(await page.getByText('New here?').count()).toBe(0);

  await user.tap(user.button('Start a new plan'));
  await user.tap(user.button('Start this plan'));
  await title.filter({ hasText: 'Step 2 of 7' }).waitFor();
  const found: Record<string, string[]> = {};
  for (const [name, size] of Object.entries(VIEWPORTS)) {
    await page.setViewportSize(size);
    await drawn(page);
    found[name] = await layoutFaults(page);
  }
  expect(found).toEqual({ tablet: [], tabletPortrait: [], phone: [], phoneSideways: [], projector: [] });
  await page.setViewportSize(VIEWPORTS.tablet);
  await drawn(page);
  await user.tap(user.button('Take a battery'));
  const box = await user.pane('Whole vehicle').boundingBox();
  if (box === null) throw new Error('No pane');
  await finger.tap({ x: box.x + box.width * 0.16, y: box.y + box.height * 0.56 });
  await title.filter({ hasText: 'Step 3 of 7' }).waitFor();
  const term = user.button("What does 'Longest unprotected' mean?");
  await user.tap(term);
  await page.getByText('The live cable between a source and its first fuse.').waitFor();
  expect(await axe(page)).toEqual([]);
  await user.tap(term);
  expect(await page.getByRole('note').count()).toBe(0);

  await user.tap(user.button('Leave'));
  expect(await card.count()).toBe(0);

  await page.reload();
  await untilText(page, 'not worked out yet');
  expect(await card.count()).toBe(0);
  expect(await page.getByText('New here?').count()).toBe(0);
  await user.tap(user.button('Legend'));
  await user.tap(user.button('Show me a first plan'));
  await title.filter({ hasText: 'Step 3 of 7' }).waitFor();
  opened.expectClean();
}, 60_000);
