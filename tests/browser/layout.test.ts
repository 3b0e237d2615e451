import { expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { SAID, type Said } from './support/said.ts';
import { openFile } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';
import { longWalk, ownWalk, shortWalk } from './support/walk.ts';

/**
 * On every screen nothing is cut off or lies on something else, nothing scrolls sideways, and every control can be hit
 * by a finger: with the example in English and in German, and with names as long as a plan may hold. One page is walked
 * through its states and brought to every size in each; the tests of phone and projector by themselves are elsewhere.
 */

const LONGEST_NAME = 200;

/** Every name of a plan made as long as it may be: one without a single space, the next of many words. */
function withLongNames(text: string): string {
  let count = 0;
  return text.replace(/"name": "([^"]*)"/g, (_all, name: string) => {
    count += 1;
    const filler = count % 2 === 0 ? 'Wwm' : ' rear quarter';
    return `"name": "${`${count}${name}`.padEnd(LONGEST_NAME, filler)}"`;
  });
}

/** The same plan with what is fed and what feeds it, and nothing between. */
function withoutFeed(text: string): string {
  const plan: { fittings: readonly { kind: string }[] } = JSON.parse(text);
  const fittings = plan.fittings.filter(({ kind }) => kind === 'battery' || kind === 'amplifier');
  return JSON.stringify({ ...plan, fittings, runs: [] });
}

async function example(): Promise<string> {
  return (await fetch(new URL('demo.plan.json', inject('pageUrl')))).text();
}

/** The tablet comes last: there the walk goes on. */
const SCREENS: readonly ViewportName[] = ['tabletPortrait', 'phone', 'phoneSideways', 'projector', 'tablet'];

/** What is wrong at each size; where the answer is a sheet and shows what is selected, pulled up as well. */
async function faultsAtEverySize(
  user: TouchUser,
  said: Said,
  state: string,
  screens: readonly ViewportName[] = SCREENS,
  within?: string,
): Promise<string[]> {
  const { page } = user;
  const faults: string[] = [];
  const look = async (where: string) => {
    faults.push(...(await layoutFaults(page, within)).map((fault) => `${where}: ${fault}`));
  };
  for (const screen of screens) {
    await page.setViewportSize(VIEWPORTS[screen]);
    await drawn(page);
    await look(screen);
    const pull = user.button(said.pullUp);
    if (!state.endsWith('selected') || !(await pull.isVisible())) continue;
    await user.tap(pull);
    await drawn(page);
    await look(`${screen}, answer pulled up`);
    await user.tap(user.button(said.pullDown));
  }
  return faults;
}

it.each([
  { language: 'en', walk: shortWalk, ownScreens: ['phone', 'tablet'] },
  // German words are the longer ones: what has room for them has room for the English
  { language: 'de', walk: longWalk, ownScreens: ['tabletPortrait', 'phone', 'phoneSideways', 'tablet'] },
] as const)(
  "the example, and plans of one's own: $language",
  { timeout: 240_000 },
  async ({ language, walk, ownScreens }) => {
    // the finger tests every screen alike: a projector is hung beside a touch screen as well
    const opened = await openForTest('tablet', { locale: language });
    const user = new TouchUser(opened);
    const said = SAID[language];
    await untilText(user.page, said.oneToStopFor);
    const found: Record<string, string[]> = {};
    const wanted: Record<string, string[]> = {};
    for (const [state, bring] of walk(user, said)) {
      await bring();
      found[state] = await faultsAtEverySize(user, said, state);
      // English is looked at on its way through the same states in accessibility.test.ts
      if (language !== 'en') found[state].push(...(await axe(user.page)));
      wanted[state] = [];
    }
    const unfed = { name: 'unfed.plan.json', buffer: Buffer.from(withoutFeed(await example())) };
    for (const [state, bring, within] of ownWalk(user, said, unfed)) {
      await bring();
      found[state] = await faultsAtEverySize(user, said, state, ownScreens, within);
      found[state].push(...(await axe(user.page)));
      wanted[state] = [];
    }
    expect(found).toEqual(wanted);
    opened.expectClean();
  },
);

it('names of 200 characters', async () => {
  const opened = await openForTest();
  const user = new TouchUser(opened);
  await openFile(user, 'long.plan.json', withLongNames(await example()));
  await untilText(user.page, /is open\.$/m);
  await user.tap(user.button('Dismiss'));
  const found: Record<string, string[]> = {};
  const wanted: Record<string, string[]> = {};
  for (const [state, bring] of shortWalk(user, SAID.en)) {
    await bring();
    found[state] = await faultsAtEverySize(user, SAID.en, state);
    wanted[state] = [];
  }
  expect(found).toEqual(wanted);
  opened.expectClean();
});
