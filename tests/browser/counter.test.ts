/**
 * At a counter, with touch alone: from opening the page to gauge, fuse and alternatives for a vehicle with two
 * amplifiers. The taps are counted by the test.
 */
import { expect, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { layoutFaults } from '../support/layout.ts';
import { untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { headline, shownValue, undoButton } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

const MOST_TAPS = 25;

it(`gauge, fuse and alternatives for two amplifiers take at most ${MOST_TAPS} taps`, async () => {
  const opened = await openForTest();
  const user = new TouchUser(opened);
  const { page } = opened;
  let taps = 0;
  const tap = async (...target: Parameters<TouchUser['tap']>) => {
    taps += 1;
    await user.tap(...target);
  };
  await untilText(page, 'Longest unprotected');
  await tap(user.button('New plan'));
  const dialog = page.getByRole('dialog', { name: 'New plan' });
  await tap(dialog.getByText('Station wagon', { exact: true }));
  await tap(dialog.getByText('In the engine bay', { exact: true }));
  await tap(dialog.getByRole('button', { name: 'Add 300 W' }));
  await tap(dialog.getByRole('button', { name: 'Add 500 W' }));
  expect(await layoutFaults(page)).toEqual([]);
  await tap(dialog.getByRole('button', { name: 'Start this plan' }));
  // a tap that comes too soon was meant for what stood there before
  const settled = () => page.locator('.sketch-propose:not([data-quiet])').waitFor();
  await settled();
  await tap(user.button('Propose feed'));
  await user.button('Accept all').waitFor();
  await settled();
  await tap(user.button('Accept all'));
  await untilText(page, /^Provisional: \d+ lengths to tape/m);
  expect(await headline(page)).toMatch(/^Provisional/);
  // at a counter these are read out; what they are is worked out elsewhere (tablet.test.ts)
  expect(await shownValue(page, 'Feed conductor')).toMatch(/^SAE /);
  expect(await shownValue(page, 'Main fuse')).toMatch(/ A$/);
  await tap(user.button('Alternatives'));
  const table = page.getByRole('region', { name: 'Alternatives' }).getByRole('table');
  await table.waitFor();
  expect(await table.getByRole('columnheader').count()).toBe(6);
  expect(await axe(page)).toEqual([]);
  expect(await layoutFaults(page)).toEqual([]);
  await tap(page.getByRole('button', { name: 'Accept: Thicker feed' }));
  expect(await undoButton(page).getAttribute('aria-label')).toContain('accept an alternative');
  expect(taps).toBeLessThanOrEqual(MOST_TAPS);
  opened.expectClean();
});
