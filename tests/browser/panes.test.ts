/** The two panes: on every wide screen both, and in the bay's the stretch that nothing protects is as long as thumbs need. */
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { launchBrowser, openPage, VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { drawn, untilText } from '../support/reading.ts';
import { metres } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

/** Two fingertips of an ordinary hand, css px: one holds the fuse, one stays beside it. */
const TWO_TIPS_PX = 88;

let browser: Awaited<ReturnType<typeof launchBrowser>>;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

it.each<[ViewportName, number]>([
  ['tablet', 2],
  ['tabletPortrait', 2],
  ['projector', 2],
  ['phone', 1],
])(
  '%s shows %i of the panes, and the stretch from source to fuse two fingertips long in the bay',
  async (size, panes) => {
    const opened = await openPage(browser, inject('pageUrl'), size, { locale: 'en' });
    try {
      const user = new TouchUser(opened);
      const { page } = user;
      await untilText(page, '1 to stop for');
      await drawn(page);
      const { width, height } = VIEWPORTS[size];
      const boxes = await page.locator('.sketch-pane').evaluateAll((all) =>
        all.map((pane) => {
          const { left, top, right, bottom } = pane.getBoundingClientRect();
          return { left, top, right, bottom };
        }),
      );
      expect(boxes).toHaveLength(panes);
      for (const { left, top, right, bottom } of boxes) {
        expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(width);
        expect(bottom).toBeLessThanOrEqual(height);
        expect(Math.min(right - left, bottom - top)).toBeGreaterThan(160);
      }
      // what the scale bar of the bay says, times the length beside the stripe
      const scale = user.pane('Engine bay').locator('..').locator('.sketch-scale');
      const barPx = (await scale.locator('.sketch-scale-bar').boundingBox())?.width ?? Number.NaN;
      const pxPerM = barPx / metres(await scale.innerText());
      const stretchM = metres(await page.locator('.sketch-label[data-kind="hazard"]').first().innerText());
      expect(stretchM).toBeCloseTo(0.919, 3);
      expect(stretchM * pxPerM).toBeGreaterThan(TWO_TIPS_PX);
      opened.expectClean();
    } finally {
      await opened.close();
    }
  },
);

it.each<ViewportName>(['tablet', 'tabletPortrait', 'projector'])(
  '%s has every pane where it was when a tool is taken up, and what to do with it below them',
  async (size) => {
    const opened = await openPage(browser, inject('pageUrl'), size, { locale: 'en', hasTouch: true });
    try {
      const user = new TouchUser(opened);
      const { page } = user;
      const boxes = () =>
        page.locator('.sketch-pane').evaluateAll((all) =>
          all.map((pane) => {
            const { left, top, right, bottom } = pane.getBoundingClientRect();
            return [left, top, right, bottom];
          }),
        );
      await untilText(page, 'Tap to select, drag to move.');
      await drawn(page);
      const before = await boxes();
      for (const [tile, group, says] of [
        ['Fuse', 'Fittings', 'Fuse: tap where it goes.'],
        ['Run', 'The hand', 'Tap where the run starts.'],
        ['Move', 'The hand', 'Tap to select, drag to move.'],
      ] as const) {
        await user.take(tile, group);
        await untilText(page, says);
        await drawn(page);
        expect(await boxes()).toEqual(before);
        const hint = await page.getByText(says).boundingBox();
        expect(hint?.y).toBeGreaterThanOrEqual(Math.max(...before.map(([, , , bottom]) => bottom ?? 0)));
      }
      opened.expectClean();
    } finally {
      await opened.close();
    }
  },
);
