import { describe, expect, it } from 'vitest';
import { type OpenedPage, VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { broken, layoutFaults } from '../support/layout.ts';
import { drawn, textOf, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { headline } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

/**
 * The screen turned to a customer and to a class, and for each hand, switched by touch on one page (the lights:
 * lights.test.ts). The example has one thing to stop for: its first fuse is twice as far from the battery as it may be.
 */
let opened: OpenedPage;
let user: TouchUser;

openForAll(async (shared) => {
  opened = shared;
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
});

/** Chooses in the view dialog. */
async function choose(...choices: readonly string[]): Promise<void> {
  const work = user.button('Work view');
  await user.tap((await work.isVisible()) ? work : user.button('View'));
  const dialog = user.page.getByRole('dialog', { name: 'View' });
  for (const choice of choices) await user.tap(dialog.getByText(choice, { exact: true }));
  await user.tap(dialog.getByRole('button', { name: 'Close', exact: true }));
  await dialog.waitFor({ state: 'detached' });
  await drawn(user.page);
}

async function resize(screen: ViewportName): Promise<void> {
  await user.page.setViewportSize(VIEWPORTS[screen]);
  await drawn(user.page);
}

/** What is wrong with the layout, at every size. */
async function faultsAtEverySize(): Promise<Record<string, string[]>> {
  const faults: Record<string, string[]> = {};
  for (const screen of ['tabletPortrait', 'phone', 'phoneSideways', 'projector', 'tablet'] as const) {
    await resize(screen);
    faults[screen] = await layoutFaults(user.page);
  }
  return faults;
}
const NONE = { tabletPortrait: [], phone: [], phoneSideways: [], projector: [], tablet: [] };

const drawingOf = (pane: string) => user.page.getByRole('img', { name: new RegExp(`^${pane}: drawing`) });
/** Pixels of the stripe's yellow in the picture of a pane. */
async function yellow(pane: string): Promise<number> {
  return drawingOf(pane).evaluate((element) => {
    let count = 0;
    for (const canvas of element.querySelectorAll('canvas')) {
      const image = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      for (let i = 0; i + 3 < image.length; i += 4) {
        if (image[i] === 255 && image[i + 1] === 204 && image[i + 2] === 0) count += 1;
      }
    }
    return count;
  });
}

describe('the work face', () => {
  it('has the stripe with its length', async () => {
    expect(await yellow('Engine bay')).toBeGreaterThan(500);
    expect(await drawingOf('Engine bay').getAttribute('aria-label')).toMatch(/Longest unprotected stretch \d/);
  });
});

describe('the customer face', () => {
  it('is not finished where there is something to stop for, and shows neither stripe nor fields', async () => {
    await choose('Customer');
    await untilText(user.page, 'What protects your car');
    expect(await headline(user.page)).toBe('Not finished: 1 point to settle before building');
    expect(await yellow('Engine bay')).toBe(0);
    expect(await drawingOf('Engine bay').getAttribute('aria-label')).not.toMatch(/nprotected/);
    expect(await user.page.locator('input:visible, select:visible, textarea:visible').count()).toBe(0);
    expect(await textOf(user.page)).not.toMatch(/\bsafe\b|nprotected|1 to stop for/i);
    expect(await faultsAtEverySize()).toEqual(NONE);
    await resize('phoneSideways');
    const ratings = user.page.locator('.customer-fuses b');
    expect(await ratings.count()).toBeGreaterThan(1);
    expect(await broken(ratings)).toEqual([]);
    await resize('tablet');
  });

  it('lets an amplifier be changed, and the tools be pulled out', async () => {
    const { page } = user;
    await user.tap(user.button(/^Bass amplifier/));
    await user.tap(user.button('Change Bass amplifier'));
    await user.write(user.field(/^Rated output/), '600');
    await untilText(page, '900 W in all');
    await user.tap(user.button('Done'));
    await user.tap(user.button('Tools'));
    await page.getByRole('radiogroup', { name: 'The hand' }).waitFor();
    await user.tap(user.button('Close tools'));
    await user.tap(user.button(/^Undo:/));
    await untilText(page, '1300 W in all');
  });

  it('is left with one tap', async () => {
    await user.tap(user.button('Back to work'));
    await untilText(user.page, '1 to stop for');
    expect(await yellow('Engine bay')).toBeGreaterThan(500);
  });
});

describe('the class face', () => {
  /** Type of what stands on the sketch, and of the large figures, px. */
  const typePx = () =>
    user.page.evaluate(() =>
      ['.sketch-label[data-kind="fitting"]', '.sketch-label[data-kind="hazard"]', '.figure-value'].map((selector) => {
        const element = document.querySelector(selector);
        return element === null ? Number.NaN : Number.parseFloat(getComputedStyle(element).fontSize);
      }),
    );

  const FIGURE = /to stop for|\d (A|V|W|mm²|%)(?!\w)|SAE/;

  it('hides every figure and shows it again; the stripe stays', async () => {
    const { page } = user;
    const small = await typePx();
    await choose('Class');
    await user.tap(user.button('Hide figures'));
    await untilText(page, 'Figures are hidden');
    const hidden = await textOf(page);
    expect(hidden).toContain('Main fuse');
    expect(hidden).toContain('Longest unprotected');
    expect(hidden).not.toMatch(FIGURE);
    expect(await drawingOf('Engine bay').getAttribute('aria-label')).not.toMatch(/nprotected/);
    expect(await yellow('Engine bay')).toBeGreaterThan(500);
    expect(await faultsAtEverySize()).toEqual(NONE);

    await user.tap(user.button('Show figures'));
    await untilText(page, '1 to stop for');
    expect(await textOf(page)).toMatch(/SAE/);
    // larger in a class, half as large again on the wall: for the back row
    for (const [screen, times] of [
      ['tablet', 1.1],
      ['projector', 1.5],
    ] as const) {
      await resize(screen);
      const large = (await typePx()).map((px, place) => px / (small[place] ?? Number.NaN));
      expect([screen, Math.min(...large) >= times]).toEqual([screen, true]);
    }
    await resize('tablet');
    expect(await faultsAtEverySize()).toEqual(NONE);
  });
});

it('before a class the sheet stands still while tools are taken up and put away', async () => {
  await choose('Class');
  await resize('projector');
  const panes = () =>
    user.page
      .locator('.sketch-pane')
      .evaluateAll((all) => all.map((pane) => JSON.stringify(pane.getBoundingClientRect())));
  const before = await panes();
  await user.take('Fuse', 'Fittings');
  await user.page.getByText('Fuse: tap where it goes.').waitFor();
  expect(await panes()).toEqual(before);
  await user.take('Move', 'The hand');
  expect(await panes()).toEqual(before);
  await resize('tablet');
});

/** As the canvas gives back what a style sheet writes. */
const rgb = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** The colour that most of the picture of a pane has where anything is drawn: the sheet's, or the vehicle's on it. */
async function mostOf(pane: string): Promise<number[]> {
  return drawingOf(pane).evaluate((element) => {
    const counts = new Map<number, number>();
    const [canvas] = element.querySelectorAll('canvas');
    const image = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    for (let i = 0; i + 3 < image.length; i += 4) {
      const colour = ((image[i] ?? 0) << 16) | ((image[i + 1] ?? 0) << 8) | (image[i + 2] ?? 0);
      if (image[i + 3] === 255) counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    const [[most = 0] = []] = [...counts].sort(([, a], [, b]) => b - a);
    return [most >> 16, (most >> 8) & 255, most & 255];
  });
}

describe('paper, sun and dark', () => {
  // the vehicle's ground as the palette of each has it
  it.each([
    ['Sun', '#f1f1f1'],
    ['Dark', '#1f2629'],
    ['Paper', '#ece9df'],
  ] as const)('%s, once tapped, is the light of the drawing too', async (light, ground) => {
    await choose(light);
    expect(await mostOf('Whole vehicle')).toEqual(rgb(ground));
  });
});

describe('a hand that draws with the left', () => {
  const leftOf = async (role: 'region' | 'complementary', name: string) =>
    (await user.page.getByRole(role, { name }).boundingBox())?.x ?? Number.NaN;

  it('finds shelf and answer on the other side, and all of it after a reload', async () => {
    const { page } = user;
    await choose('Dark', 'Left', 'Work');
    await untilText(page, '1 to stop for');
    expect(await leftOf('complementary', 'Tools')).toBeGreaterThan(await leftOf('region', 'Answer'));
    expect(await faultsAtEverySize()).toEqual(NONE);
    await resize('phone');
    const pull = await user.button('Show the whole answer').boundingBox();
    expect(pull?.x).toBeLessThan(VIEWPORTS.phone.width / 2);
    await resize('tablet');
    await choose('Customer');
    expect(await faultsAtEverySize()).toEqual(NONE);

    await page.reload();
    await untilText(page, 'What protects your car');
    expect(await leftOf('complementary', 'Tools')).toBeGreaterThan(await leftOf('region', 'Answer'));
    const root = await page.evaluate(() => ({ ...document.documentElement.dataset }));
    expect(root).toMatchObject({ theme: 'dark', side: 'left', face: 'customer' });
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe('dark');
    opened.expectClean();
  });
});
