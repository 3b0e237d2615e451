import { expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { middleOf, type Place } from '../support/finger.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { undoDepth } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

/** What a hand does on the glass beside tapping and dragging: loupe, long press, a tile dragged off the shelf. */

async function open(screen: 'tablet' | 'phone'): Promise<OpenedPage> {
  const opened = await openForTest(screen);
  await untilText(opened.page, '1 to stop for');
  await drawn(opened.page);
  return opened;
}

async function boxOf({ page }: OpenedPage, selector: string) {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`${selector} is not to be seen.`);
  return box;
}

const stateOf = ({ page }: OpenedPage) => page.locator('.sketch').getAttribute('data-hand');
const loupes = ({ page }: OpenedPage) => page.locator('.sketch-loupe').count();

/** From the middle of the tile for a ground point sideways off the shelf, then onto empty sheet in the bay. */
async function dragTile(here: OpenedPage): Promise<Place> {
  const tile = await middleOf(here.page.locator('.tile[data-choice="ground"]'));
  const bay = await boxOf(here, '[data-pane="bay"]');
  const onSheet = { x: bay.x + bay.width * 0.5, y: bay.y + bay.height * 0.55 };
  await here.finger.slide(tile, { x: tile.x + 120, y: tile.y }, 4);
  await here.finger.move(onSheet, 6);
  expect(await stateOf(here)).toBe('place.aiming');
  return onSheet;
}

it('a tile dragged onto the sheet is aimed through a loupe that stands above the finger, inside the pane', async () => {
  const here = await open('tablet');
  const finger = await dragTile(here);
  const [loupe, bay] = [await boxOf(here, '.sketch-loupe'), await boxOf(here, '[data-pane="bay"]')];
  expect(loupe.y + loupe.height).toBeLessThan(finger.y - 24);
  expect(loupe.y).toBeGreaterThanOrEqual(bay.y);
  expect(loupe.x).toBeGreaterThanOrEqual(bay.x);
  expect(loupe.x + loupe.width).toBeLessThanOrEqual(bay.x + bay.width);
  // it shows the sheet: more than one colour
  const colours = await here.page.locator('.sketch-loupe canvas').evaluate((canvas) => {
    const context = canvas instanceof HTMLCanvasElement ? canvas.getContext('2d') : null;
    const { data } = context?.getImageData(0, 0, 120, 120) ?? { data: [] };
    return new Set(Array.from({ length: data.length / 4 }, (_, i) => data[4 * i])).size;
  });
  expect(colours).toBeGreaterThan(3);
  await here.finger.up();
  expect(await loupes(here)).toBe(0);
  expect([await stateOf(here), await undoDepth(here.page)]).toEqual(['move.idle', 1]);
  here.expectClean();
});

it('a second finger, or the way back to the shelf, cancels a tile that is dragged, and a tap still takes it up', async () => {
  const here = await open('tablet');
  const finger = await dragTile(here);
  await here.finger.down({ x: finger.x + 120, y: finger.y + 40 }, 2);
  await here.finger.up(2);
  await here.finger.up(1);
  expect([await stateOf(here), await undoDepth(here.page)]).toEqual(['move.idle', 0]);

  const tile = await middleOf(here.page.locator('.tile[data-choice="ground"]'));
  await dragTile(here);
  await here.finger.move(tile, 4);
  await here.finger.up();
  expect([await stateOf(here), await undoDepth(here.page)]).toEqual(['move.idle', 0]);

  await here.finger.tap(tile);
  expect(await stateOf(here)).toBe('place.idle');
  here.expectClean();
});

it('a finger held still on a fitting of a phone pulls up its fields', async () => {
  const here = await open('phone');
  const name = await here.page.getByText('Main fuse', { exact: true }).first().boundingBox();
  if (name === null) throw new Error('The main fuse is not to be seen.');
  await here.finger.longPress({ x: name.x + name.width + 40, y: name.y + name.height });
  await here.page.getByRole('region', { name: 'Selected' }).getByLabel('Name', { exact: true }).waitFor();
  expect(await undoDepth(here.page)).toBe(0);
  here.expectClean();
});

it('a finger that swipes up over the tiles behind More scrolls them, however fast; sideways it takes one along', async () => {
  const here = await open('phone');
  const { page, finger } = here;
  const user = new TouchUser(here);
  await user.tap(user.button('Tools'));
  await user.tap(user.button(/^More/));
  const tile = await boxOf(here, '.more .tile[data-choice="switch"]');
  // near its upper edge, so that the first step is off it
  const from = { x: tile.x + tile.width / 2, y: tile.y + 10 };
  await finger.slide(from, { x: from.x, y: from.y - 250 }, 5);
  await finger.up();
  expect(await stateOf(here)).toBe('move.idle');
  const scrolledPx = () => page.locator('.more').evaluate((more) => more.scrollTop);
  await expect.poll(scrolledPx).toBeGreaterThan(100);

  const other = await middleOf(page.locator('.more .tile[data-choice="load"]'));
  await finger.slide(other, { x: other.x + 180, y: other.y + 20 }, 4);
  expect(await stateOf(here)).toBe('place.aiming');
  await finger.cancel();
  expect([await stateOf(here), await undoDepth(page)]).toEqual(['move.idle', 0]);
  here.expectClean();
});
