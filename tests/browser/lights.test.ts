import { expect, it } from 'vitest';
import { axe, COLOUR_RULES } from '../support/axe.ts';
import { VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { SAID } from './support/said.ts';
import { TouchUser } from './support/touch.ts';

/**
 * The accessibility checker on every face in every light and language. A light changes colours alone: so all rules are
 * tried on paper, and in sun and dark the rules of colour. That the view dialog brings a light is tested in
 * faces.test.ts; here it is set on the root, where style sheets see it.
 */

const LIGHTS = ['sun', 'dark', 'paper'] as const;

async function axeInEveryLight({ page }: TouchUser): Promise<string[]> {
  const found: string[] = [];
  for (const light of LIGHTS) {
    await page.evaluate((theme) => {
      document.documentElement.dataset.theme = theme;
    }, light);
    const faults = await axe(page, light === 'paper' ? undefined : COLOUR_RULES);
    found.push(...faults.map((line) => `${light}: ${line}`));
  }
  return found;
}

const SCREENS: readonly ViewportName[] = ['tabletPortrait', 'phone', 'phoneSideways', 'projector', 'tablet'];

/** What is wrong with the layout at these sizes, the tablet being the last. */
async function layoutAt({ page }: TouchUser, screens: readonly ViewportName[]): Promise<string[]> {
  const found: string[] = [];
  for (const screen of screens) {
    await page.setViewportSize(VIEWPORTS[screen]);
    await drawn(page);
    found.push(...(await layoutFaults(page)).map((line) => `${screen}: ${line}`));
  }
  return found;
}

/** In the order of the view dialog. */
const FACES = ['work', 'customer', 'class'] as const;

it.each([
  { language: 'en', words: SAID.en },
  { language: 'en-GB', words: SAID.en },
  { language: 'de', words: SAID.de },
] as const)('every face in every light: $language', async ({ language, words }) => {
  const opened = await openForTest('tablet', { locale: language });
  const { page } = opened;
  const user = new TouchUser(opened);
  await untilText(page, words.oneToStopFor);
  const isIn = () => page.evaluate(() => [document.documentElement.lang, document.documentElement.dataset.face]);

  const turnTo = async (face: (typeof FACES)[number]) => {
    await user.tap(user.button((await isIn())[1] === 'work' ? words.topbar.workView : words.view));
    const dialog = page.getByRole('dialog', { name: words.view });
    await user.tap(dialog.getByRole('group').first().locator('label').nth(FACES.indexOf(face)));
    await user.tap(dialog.getByRole('button', { name: words.close, exact: true }));
    await dialog.waitFor({ state: 'detached' });
    await drawn(page);
    expect(await isIn()).toEqual([language, face]);
  };

  // in English the sizes are tried in faces.test.ts
  const look = async (screens = SCREENS) => [
    ...(await axeInEveryLight(user)),
    ...(language === 'de' ? await layoutAt(user, screens) : []),
  ];
  const found: Record<string, string[]> = {};
  found.work = await look();
  await turnTo('customer');
  found.customer = await look();
  await turnTo('class');
  found.class = await look();
  await user.tap(user.button(words.hideFigures));
  await user.button(words.showFigures).waitFor();
  found.hidden = await look();
  expect(found).toEqual({ work: [], customer: [], class: [], hidden: [] });
  opened.expectClean();
});
