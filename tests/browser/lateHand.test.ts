import type { Locator, Route } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { undoDepth } from './support/reading.ts';
import type { At } from './support/route.ts';
import { TouchUser } from './support/touch.ts';

/**
 * What takes hold of things on the sketch comes after the first picture. What a finger does before that, on a slow line
 * or after a failure, has its effect when it comes.
 */
let opened: OpenedPage;
let user: TouchUser;

/** The file it comes in. */
const HAND = /\/late-[^/]+\.js$/;
const CANNOT = 'Nothing on the sketch can be moved yet';

/** The battery of the example, and where it is taken; a finger snaps to a grid finer than this, m. */
const HOME: At = { xM: 0.55, yM: 1.4 };
const AWAY: At = { xM: 0.75, yM: 1.2 };
const SNAP_M = 0.06;

beforeEach(async () => {
  opened = await openForTest();
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
  await user.learn('Engine bay');
});

/** Opens the page again, as far as it comes without its hand. */
async function openAgain(answer: (route: Route) => Promise<void>): Promise<void> {
  const { page } = opened;
  await page.route(HAND, answer);
  await page.reload();
  await untilText(page, '1 to stop for');
  await drawn(page);
}

/** A line so slow that the hand is on its way until it is let come. */
async function openOnSlowLine(): Promise<() => void> {
  let letCome = (): void => undefined;
  const isDue = new Promise<void>((resolve) => {
    letCome = resolve;
  });
  await openAgain(async (route) => {
    await isDue;
    await route.continue();
  });
  return letCome;
}

const undoOf = (steps: RegExp): Promise<void> =>
  opened.page.getByRole('button', { name: steps }).first().waitFor({ timeout: 10_000 });

const spot = (at: At) => user.spot(at, 'Engine bay');

async function expectAt(at: At): Promise<void> {
  const seen = await user.placeInFields();
  expect(Math.abs(seen.xM - at.xM)).toBeLessThan(SNAP_M);
  expect(Math.abs(seen.yM - at.yM)).toBeLessThan(SNAP_M);
}

/** The name of the pass-through as it stands in the engine bay, below it. */
const name = (): Locator =>
  opened.page.locator('section', { has: user.pane('Engine bay') }).getByText('Firewall pass-through', { exact: true });

async function acrossOf(thing: Locator): Promise<number> {
  const box = await thing.boundingBox();
  if (box === null) throw new Error(`${String(thing)} is not to be seen.`);
  return box.x + box.width / 2;
}

describe('a sketch whose hand is still on its way', () => {
  it('does what a finger did before it came: a tap and a drag', async () => {
    const { page, finger } = opened;
    const letCome = await openOnSlowLine();
    await finger.tap(spot(HOME));
    await finger.drag(spot(HOME), spot(AWAY));
    expect(await undoDepth(page)).toBe(0);
    expect(await page.getByRole('region', { name: 'Selected' }).isVisible()).toBe(false);
    letCome();
    await undoOf(/ 1 step$/);
    await expectAt(AWAY);
    opened.expectClean();
  });

  it('goes on under the finger that began before it came', async () => {
    const { page, finger } = opened;
    const letCome = await openOnSlowLine();
    await finger.slide(spot(HOME), spot({ xM: 0.65, yM: 1.3 }));
    letCome();
    await page.locator('[data-hand="move.draggingFitting"]').waitFor();
    await finger.move(spot(AWAY));
    await finger.up();
    await undoOf(/ 1 step$/);
    await expectAt(AWAY);
    opened.expectClean();
  });

  it('pans under one finger and zooms under two meanwhile', async () => {
    const { page, finger } = opened;
    const letCome = await openOnSlowLine();
    const pane = await user.pane('Engine bay').boundingBox();
    if (pane === null) throw new Error('The engine bay is not to be seen.');
    // before the firewall, where nothing lies
    const bare = spot({ xM: 0.9, yM: 1.15 });
    const before = await acrossOf(name());
    await finger.drag(bare, { x: bare.x + 60, y: bare.y });
    await drawn(page);
    expect(Math.abs((await acrossOf(name())) - before - 60)).toBeLessThan(3);
    const middle = { x: pane.x + pane.width / 2, y: pane.y + pane.height / 2 };
    await finger.pinch(middle, 100, 150);
    await drawn(page);
    expect(await undoDepth(page)).toBe(0);
    letCome();
    await untilText(page, 'Tap to select');
    // names may have come to stand on other sides of their fittings: what is placed now says where a place is
    await user.tap(user.button('Snap'));
    await user.take('Ground', 'Fittings');
    const placed = { x: middle.x + 80, y: middle.y };
    await finger.tap(placed);
    const panned = spot(await user.placeInFields()).x + 60;
    // half as far again from the middle between the fingers
    expect(Math.abs(placed.x - middle.x - 1.5 * (panned - middle.x))).toBeLessThan(4);
    opened.expectClean();
  });
});

describe('a sketch whose hand cannot be fetched', () => {
  it('says so, tries again with the next touch, and does what was kept', async () => {
    const { page, finger } = opened;
    let isDown = true;
    await openAgain((route) => (isDown ? route.abort() : route.continue()));
    await untilText(page, CANNOT);
    await finger.drag(spot(HOME), spot(AWAY));
    await untilText(page, CANNOT);
    expect(await undoDepth(page)).toBe(0);
    isDown = false;
    await finger.tap(spot(AWAY));
    await undoOf(/ 1 step$/);
    await expectAt(AWAY);
    expect(await page.getByText(CANNOT).isVisible()).toBe(false);
    opened.expectClean([/late-[^/]+\.js/, /Failed to load resource/]);
  });
});
