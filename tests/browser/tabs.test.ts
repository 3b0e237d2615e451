import type { Page } from 'playwright-core';
import { beforeEach, expect, inject, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { Finger } from '../support/finger.ts';
import { drawn, readRecords, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { undoDepth, untilSaved } from './support/reading.ts';
import { close, openDialog } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** One plan in two tabs of one browser: neither overwrites the other, and both states stay to be opened. */
const TOLD = 'Another tab changed this plan. What you do here is kept as a plan of its own.';

let opened: OpenedPage;
let first: TouchUser;
let second: TouchUser;

beforeEach(async () => {
  opened = await openForTest();
  first = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
  // the first change makes the example a plan of one's own
  await rename(first, 'Shared');
  await untilSaved(opened.page, (text) => text.includes('"name": "Shared"'));
  const page = await opened.context.newPage();
  await page.goto(inject('pageUrl'));
  await untilText(page, '1 to stop for');
  second = new TouchUser({ ...opened, page, finger: await Finger.on(page) });
  expect(await nameIn(page)).toBe('Shared');
});

const nameIn = (page: Page) => page.getByLabel('Plan name', { exact: true }).inputValue();
const rename = (user: TouchUser, name: string) => user.write(user.page.getByLabel('Plan name', { exact: true }), name);

/** The newest text of every plan that the browser keeps, whichever tab wrote it. */
async function keptTexts(): Promise<string[]> {
  const newest = new Map<unknown, Record<string, unknown>>();
  for (const record of await readRecords(opened.page, 'feedrun', 'plans')) {
    const before = newest.get(record.planId);
    if (before === undefined || Number(record.revision) > Number(before.revision)) newest.set(record.planId, record);
  }
  return [...newest.values()].map(({ text }) => String(text));
}

const namesKept = async () => {
  const names = (await keptTexts()).map((text): string => JSON.parse(text).name);
  return names.sort();
};

async function openKept(user: TouchUser, name: string): Promise<void> {
  await openDialog(user, 'Plans');
  const dialog = user.page.getByRole('dialog');
  await user.tap(dialog.getByRole('button', { name: new RegExp(`^${name}`) }).first());
  await dialog.waitFor({ state: 'detached' });
  await expect.poll(() => nameIn(user.page)).toBe(name);
}

it('what one tab changes the other is told of, and keeps its own beside it', async () => {
  await rename(first, 'From the first');
  await untilText(second.page, TOLD);
  expect(await nameIn(second.page)).toBe('Shared');
  await expect.poll(namesKept).toEqual(['From the first']);
  const [ofFirst = ''] = await keptTexts();

  // the message waits for its reader, and goes when it is put away
  await second.page.bringToFront();
  await second.tap(second.button('Dismiss'));
  expect(await second.page.getByText(TOLD).count()).toBe(0);
  expect(await undoDepth(second.page)).toBe(0);

  await rename(second, 'From the second');
  await expect.poll(namesKept).toEqual(['From the first', 'From the second']);
  expect(await keptTexts()).toContain(ofFirst);
  expect(await first.page.getByText(TOLD).count()).toBe(0);

  // each goes on in its own; taking back in one leaves the other
  const ofSecond = (await keptTexts()).find((text) => text !== ofFirst) ?? '';
  await opened.page.bringToFront();
  await first.tap(first.button(/^Undo:/));
  await expect.poll(namesKept).toEqual(['From the second', 'Shared']);
  expect(await keptTexts()).toContain(ofSecond);
  await first.tap(first.button(/^Redo:/));
  await expect.poll(keptTexts).toContain(ofFirst);
  expect(await second.page.getByText(TOLD).count()).toBe(0);

  // each knows which of the two is its own, and opens the other
  await second.page.bringToFront();
  await openDialog(second, 'Plans');
  const entry = (name: string) =>
    second.page
      .getByRole('dialog')
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .first();
  expect(await entry('From the second').isDisabled()).toBe(true);
  expect(await entry('From the first').isEnabled()).toBe(true);
  await close(second, 'Close');
  await openKept(second, 'From the first');
  await openKept(second, 'From the second');

  // both are there to be opened
  await opened.page.bringToFront();
  await openKept(first, 'From the second');
  await openKept(first, 'From the first');
  await openDialog(first, 'Plans');
  expect(await first.page.getByRole('dialog').getByRole('listitem').count()).toBe(2);
  await close(first, 'Close');
  expect((await keptTexts()).sort()).toEqual([ofFirst, ofSecond].sort());
  opened.expectClean();
});

it('what both change in one moment is kept from both', async () => {
  const ready = async (user: TouchUser, name: string) => {
    await user.page.bringToFront();
    const field = user.page.getByLabel('Plan name', { exact: true });
    await user.tap(field);
    await user.page.keyboard.press('Control+A');
    await user.page.keyboard.type(name);
  };
  await ready(first, 'At once, one');
  await ready(second, 'At once, two');
  // leaving a field takes what is in it: either may have been taken when its tab was left, neither is lost
  await Promise.all([first, second].map(({ page }) => page.keyboard.press('Enter')));
  await Promise.all([drawn(first.page), drawn(second.page)]);
  await expect.poll(namesKept).toEqual(['At once, one', 'At once, two']);
  expect([await nameIn(first.page), await nameIn(second.page)]).toEqual(['At once, one', 'At once, two']);
  const texts = await keptTexts();

  // on a later visit both are there to be opened
  await opened.page.bringToFront();
  await opened.page.reload();
  await untilText(opened.page, '1 to stop for');
  const isOneOpen = (await nameIn(opened.page)) === 'At once, one';
  await openKept(first, isOneOpen ? 'At once, two' : 'At once, one');
  await openKept(first, isOneOpen ? 'At once, one' : 'At once, two');
  expect((await keptTexts()).sort()).toEqual(texts.sort());
  opened.expectClean();
});
