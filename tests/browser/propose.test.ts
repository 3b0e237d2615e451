import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { launchBrowser, type OpenedPage, openPage } from '../support/browser.ts';
import { middleOf } from '../support/finger.ts';
import { overlaps, smallTargets } from '../support/layout.ts';
import { drawn, textOf, untilText } from '../support/reading.ts';
import { headline, metres, undoDepth } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** Until a tap on what can be done counts: one that comes too soon was meant for what stood there before. */
const settled = (page: Page): Promise<void> => page.locator('.sketch-propose:not([data-quiet])').waitFor();

/** A hatchback with a battery and two amplifiers, told and joined by nothing. */
async function placed(): Promise<{ opened: OpenedPage; user: TouchUser }> {
  const opened = await openPage(browser, inject('pageUrl'), 'tablet');
  const user = new TouchUser(opened);
  const { page } = user;
  const { finger } = opened;
  await user.tap(user.button('New plan'));
  await user.tap(user.button('Start this plan'));
  await drawn(page);
  await untilText(page, 'Nothing drawn yet');
  const box = await user.pane('Whole vehicle').boundingBox();
  if (box === null) throw new Error('No pane');
  const on = (x: number, y: number) => ({ x: box.x + box.width * x, y: box.y + box.height * y });
  await user.take('Battery', 'Fittings');
  await finger.tap(on(0.16, 0.56));
  for (const [watts, y] of [
    ['600', 0.45],
    ['300', 0.56],
  ] as const) {
    await user.take('Amplifier', 'Fittings');
    await finger.tap(on(0.85, y));
    await user.write(user.field(/^Rated output/), watts);
  }
  await settled(page);
  return { opened, user };
}

it('proposes a feed for what is placed: bent, refused in part, accepted, each step taken back', async () => {
  const { opened, user } = await placed();
  const { page } = user;
  const { finger } = opened;
  /** A label stands on one side of its fitting: taps on each side until the page says what is selected. */
  const tapBeside = async (label: string, says: string) => {
    const box = await page.locator('.sketch-label[data-proposed]', { hasText: label }).last().boundingBox();
    if (box === null) throw new Error(`No ${label} is proposed.`);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const [off, aside] = [box.height / 2 + 16, box.width / 2 + 20];
    for (const at of [
      { x, y: y - off },
      { x, y: y + off },
      { x: x - aside, y },
      { x: x + aside, y },
    ]) {
      await finger.tap(at);
      await drawn(page);
      if ((await textOf(page)).includes(says)) return at;
    }
    throw new Error(`Nothing beside the label '${label}' is selected by a tap.`);
  };
  const before = await undoDepth(page);
  const panes = () =>
    page.locator('.sketch-pane').evaluateAll((all) => all.map((pane) => JSON.stringify(pane.getBoundingClientRect())));
  const asked = await panes();
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await settled(page);
  await page.getByText('As proposed: not in the plan yet').waitFor();
  expect(await undoDepth(page)).toBe(before + 1);
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overlaps(page)).toEqual([]);
  expect(await axe(page)).toEqual([]);

  // the block, a ghost, is bent to where it fits the car
  const block = await tapBeside('Distribution block', 'Distribution block: one cable feeds');
  await finger.drag(block, { x: block.x - 20, y: block.y + 16 });
  await page.getByText('Distribution block: moved by you').waitFor();
  expect(await undoDepth(page)).toBe(before + 2);
  await user.tap(page.getByRole('button', { name: 'Undo: move Distribution block' }));
  await page.getByText('Distribution block: one cable feeds').waitFor();
  await user.tap(page.getByRole('button', { name: 'Redo: move Distribution block' }));
  await page.getByText('Distribution block: moved by you').waitFor();

  await tapBeside('Ground point', 'a short way back beside it');
  await page.getByText('a short way back beside it').waitFor();
  await settled(page);
  // what is done with it lies beside the panes, which stay as they were
  expect(await panes()).toEqual(asked);
  const labels = await page.locator('.sketch-label[data-proposed]').count();
  await user.tap(user.button('Refuse'));
  await page.getByText('2 parts refused.').waitFor();
  expect(await headline(page)).toMatch(/to fix/);
  await user.tap(page.locator('.message').getByRole('button', { name: 'Undo' }));
  await drawn(page);
  expect(await page.locator('.sketch-label[data-proposed]').count()).toBe(labels);
  expect(await undoDepth(page)).toBe(before + 2);
  await settled(page);
  await user.tap(user.button('Refuse all'));
  await page.getByText(/^\d+ parts refused\.$/).waitFor();
  await settled(page);
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await settled(page);
  const depth = await undoDepth(page);
  await user.tap(user.button('Accept all'));
  await drawn(page);
  expect(await textOf(page)).not.toContain('As proposed');
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await undoDepth(page)).toBe(depth + 1);
  await user.tap(page.getByRole('button', { name: /^Undo: accept/ }));
  await page.getByText('As proposed: not in the plan yet').waitFor();
  expect(await undoDepth(page)).toBe(depth);
  await user.tap(page.getByRole('button', { name: /^Undo: propose/ }));
  await page.getByRole('button', { name: 'Propose feed' }).waitFor();
  await opened.expectClean();
  await opened.close();
}, 60_000);

it('keeps what is proposed, and what was entered on it, over a reload; a double tap refuses none of it', async () => {
  const { opened, user } = await placed();
  const { page } = user;
  const ask = await middleOf(user.button('Propose feed'));
  await settled(page);
  await opened.finger.tap(ask);
  await opened.finger.tap(ask);
  await page.getByText(/12 proposed\. Tap one/).waitFor();
  await settled(page);
  const openRun = async () => {
    await user.tap(user.button('List'));
    await user.tap(page.getByRole('button', { name: /^Battery to main fuse/i }).first());
  };
  await openRun();
  await user.write(user.field(/^Taped length/), '9 in');
  const taped = await user.field(/^Taped length/).inputValue();
  expect(metres(taped)).toBeCloseTo(0.2286, 3);
  await page.getByText(/^Kept/).first().waitFor();
  await page.reload();
  await page.getByText('As proposed: not in the plan yet').waitFor();
  await page.getByText(/12 proposed\. Tap one/).waitFor();
  await settled(page);
  await openRun();
  expect(await user.field(/^Taped length/).inputValue()).toBe(taped);
  await opened.expectClean();
  await opened.close();
}, 60_000);
