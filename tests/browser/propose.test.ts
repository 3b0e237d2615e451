import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { launchBrowser, openPage } from '../support/browser.ts';
import { overlaps, smallTargets } from '../support/layout.ts';
import { drawn, textOf, untilText } from '../support/reading.ts';
import { headline, undoDepth } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

it('proposes a feed for what is placed: bent, refused in part, accepted, taken back', async () => {
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
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await page.getByText('As proposed: not in the plan yet').waitFor();
  expect(await undoDepth(page)).toBe(before);
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overlaps(page)).toEqual([]);
  expect(await axe(page)).toEqual([]);

  // the block, a ghost, is bent to where it fits the car
  const block = await tapBeside('Distribution block', 'Distribution block: one cable feeds');
  await finger.drag(block, { x: block.x - 20, y: block.y + 16 });
  await page.getByText('Distribution block: one cable feeds').waitFor();
  expect(await undoDepth(page)).toBe(before);

  await tapBeside('Ground point', 'a short way back beside it');
  await page.getByText('a short way back beside it').waitFor();
  await user.tap(user.button('Refuse'));
  expect(await headline(page)).toMatch(/to fix/);
  await user.tap(user.button('Refuse all'));
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await user.tap(user.button('Accept all'));
  await drawn(page);
  expect(await textOf(page)).not.toContain('As proposed');
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await undoDepth(page)).toBe(before + 1);
  await user.tap(page.getByRole('button', { name: /^Undo: accept/ }));
  await page.getByRole('button', { name: 'Propose feed' }).waitFor();
  expect(await undoDepth(page)).toBe(before);
  await opened.expectClean();
  await opened.close();
}, 60_000);
