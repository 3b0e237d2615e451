import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { type FigureLabel, figure, headline, metres, shownValue, undoDepth } from './support/reading.ts';
import type { At } from './support/route.ts';
import { TouchUser } from './support/touch.ts';

/** What the page says of the place under a finger that has not lifted is what it says once the thing is left there. */
let opened: OpenedPage;
let user: TouchUser;

beforeEach(async () => {
  opened = await openForTest();
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
});

const LABELS: readonly FigureLabel[] = ['Feed conductor', 'Main fuse', 'Worst drop', 'Longest unprotected'];
/** What works drafts out beside the page. */
const WORKER = /assess\.worker/;
/** What works answers out in the page itself, and what asks the worker. */
const OWN = /\/assess-[^/]*\.js/;
const ASKING = /\/answering-[^/]*\.js/;
/** More than the hand is still before the worker is told the plan. */
const STILL_FRAMES = 40;
/** A finger does not hold still for longer than this to read a figure, ms. */
const HOLD_MS = 3_000;

/** On the sheet: the main fuse of the example, and the bend of its cable from the battery, which is taken out first. */
const HOME: At = { xM: 0.3, yM: 0.75 };
const BEND: At = { xM: 0.3, yM: 1.3 };

/**
 * Where the fuse is taken, near enough: a finger snaps. Beyond 45 cm is a stop, and a length that is only drawn may be
 * 10 cm more.
 */
const PLACES: readonly { at: At; isStop: boolean }[] = [
  { at: { xM: 0.5, yM: 1.2 }, isStop: false },
  { at: { xM: 0.7, yM: 0.7 }, isStop: true },
];

/** The cable from the battery to the fuse there: straight, and 0.1 m of rise. */
const cableM = ({ xM, yM }: At): number => Math.hypot(xM - 0.55, yM - 1.4) + 0.1;

/** The large figures with the words under them, and the verdict. */
async function said(page: Page) {
  const figures: [string, unknown][] = [];
  for (const label of LABELS) figures.push([label, await figure(page, label)]);
  return { headline: await headline(page), ...Object.fromEntries(figures) };
}

/** The rows beside the finger, by name. */
async function besideFinger(page: Page): Promise<Record<string, string>> {
  const rows = await page.locator('.sketch-finger > div').allInnerTexts();
  return Object.fromEntries(rows.map((row) => row.split('\n').map((part) => part.trim())));
}

/** Takes the fuse from place to place, holds it at each, then leaves it there. */
async function dragAndHold(): Promise<void> {
  const { page, finger } = opened;
  await user.learn('Engine bay');
  await finger.tap(user.spot(BEND, 'Engine bay'));
  await user.tap(user.button('Remove bend').first());
  const depth = await undoDepth(page);
  let from = HOME;
  for (const [index, { at, isStop }] of PLACES.entries()) {
    await finger.slide(user.spot(from, 'Engine bay'), user.spot(at, 'Engine bay'));
    const unprotectedM = async () => metres(await shownValue(page, 'Longest unprotected'));
    // each step of the finger on its way changes the length by more than that
    await expect.poll(unprotectedM, { timeout: HOLD_MS, interval: 50 }).toBeCloseTo(cableM(at), 2);
    const [held, beside] = [await said(page), await besideFinger(page)];
    expect(beside.Unprotected).toBe(await shownValue(page, 'Longest unprotected'));
    expect(beside['Worst drop']).toBe(await shownValue(page, 'Worst drop'));
    expect([held.headline, held.headline === '1 to stop for']).toEqual([held.headline, isStop]);
    expect(await undoDepth(page)).toBe(depth + index);

    await finger.up();
    expect(await undoDepth(page)).toBe(depth + index + 1);
    expect(await said(page)).toEqual(held);
    from = await user.placeInFields();
    expect(await unprotectedM()).toBeCloseTo(cableM(from), 3);
    // where the stretch has become too short to be worked on, the pane looks at it from nearer
    await user.learn('Engine bay');
  }
}

describe('a fuse held by a finger that has not lifted', () => {
  it('is answered for where it is, beside the page', async () => {
    await expect.poll(() => opened.page.workers().filter((worker) => WORKER.test(worker.url()))).toHaveLength(1);
    await dragAndHold();
    opened.expectClean();
  });

  it('is answered for by the page itself, where nothing can work beside it', async () => {
    const { page, context } = opened;
    await context.route(WORKER, (route) => route.abort());
    // what is still on its way when a page is loaded anew counts as failed
    await page.waitForLoadState('networkidle');
    const failed = page.waitForEvent('requestfailed', (request) => WORKER.test(request.url()));
    await page.reload();
    await untilText(page, '1 to stop for');
    await failed;
    await expect.poll(() => page.workers().length).toBe(0);
    await dragAndHold();
    opened.expectClean([WORKER]);
  });
});

it('on a slow line nothing is asked of the page before it can answer, and then all is as ever', async () => {
  const { page, context } = opened;
  let letCome = (): void => undefined;
  const isDue = new Promise<void>((resolve) => {
    letCome = resolve;
  });
  await context.route(OWN, async (route) => {
    await isDue;
    await route.continue();
  });
  await page.waitForLoadState('networkidle');
  const asking = page.waitForResponse(ASKING);
  await page.reload();
  await asking;
  for (let frame = 0; frame < STILL_FRAMES; frame += 1) await drawn(page);
  letCome();
  await untilText(page, '1 to stop for');
  await expect.poll(() => page.workers().filter((worker) => WORKER.test(worker.url()))).toHaveLength(1);
  opened.expectClean();
});
