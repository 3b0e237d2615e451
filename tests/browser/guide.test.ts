import { expect, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { VIEWPORTS } from '../support/browser.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { savedText, undoDepth, untilSaved } from './support/reading.ts';
import { selectInList } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

it('a first plan step by step, left at any moment, and trade words explained in place', async () => {
  const opened = await openForTest();
  const { page, finger } = opened;
  const user = new TouchUser(opened);
  await untilText(page, /\d to stop for/);
  await user.tap(user.button('Show me'));
  const card = page.getByRole('complementary', { name: 'First plan' });
  const title = card.getByRole('heading');
  await title.filter({ hasText: 'Step 1 of 7' }).waitFor();
  expect(await page.getByText('New here?').count()).toBe(0);

  await user.tap(user.button('Start a new plan'));
  await user.tap(user.button('Start this plan'));
  await title.filter({ hasText: 'Step 2 of 7' }).waitFor();
  const found: Record<string, string[]> = {};
  for (const [name, size] of Object.entries(VIEWPORTS)) {
    await page.setViewportSize(size);
    await drawn(page);
    found[name] = await layoutFaults(page);
  }
  expect(found).toEqual({ tablet: [], tabletPortrait: [], phone: [], phoneSideways: [], projector: [] });
  await page.setViewportSize(VIEWPORTS.tablet);
  await drawn(page);
  await user.tap(user.button('Take a battery'));
  const box = await user.pane('Whole vehicle').boundingBox();
  if (box === null) throw new Error('No pane');
  await finger.tap({ x: box.x + box.width * 0.16, y: box.y + box.height * 0.56 });
  await title.filter({ hasText: 'Step 3 of 7' }).waitFor();
  const term = user.button("What does 'Longest unprotected' mean?");
  await user.tap(term);
  await page.getByText('The live cable between a source and its first fuse.').waitFor();
  expect(await axe(page)).toEqual([]);
  await user.tap(term);
  expect(await page.getByRole('note').count()).toBe(0);

  await user.tap(user.button('Leave'));
  expect(await card.count()).toBe(0);

  await page.reload();
  await untilText(page, 'not worked out yet');
  expect(await card.count()).toBe(0);
  expect(await page.getByText('New here?').count()).toBe(0);
  await user.tap(user.button('Legend'));
  await user.tap(user.button('Show me a first plan'));
  await title.filter({ hasText: 'Step 3 of 7' }).waitFor();
  opened.expectClean();
}, 60_000);

it('every step by touch to the end; left at each, it changes nothing and is taken up where it was', async () => {
  const opened = await openForTest();
  opened.page.setDefaultTimeout(6000);
  const { page, finger } = opened;
  const user = new TouchUser(opened);
  await untilText(page, /\d to stop for/);
  const card = page.getByRole('complementary', { name: 'First plan' });
  const isAt = (step: number) => card.getByRole('heading', { name: `Step ${step} of 7` }).waitFor();
  const act = (name: string) => user.tap(card.getByRole('button', { name, exact: true }));
  await user.tap(user.button('Show me'));

  /** Left at a step and taken up again; `isKept` says when the plan is kept as that step found it. */
  const leaveAt = async (step: number, isKept: (text: string) => boolean) => {
    await isAt(step);
    const before = step === 1 ? await savedText(page) : await untilSaved(page, isKept);
    const depth = await undoDepth(page);
    await act('Leave');
    await card.waitFor({ state: 'detached' });
    await user.tap(user.button('Legend'));
    await user.tap(user.button('Show me a first plan'));
    await isAt(step);
    expect(await undoDepth(page)).toBe(depth);
    expect(await savedText(page)).toBe(before);
  };
  const count = (text: string, kind: string) => text.match(new RegExp(`"kind": "${kind}"`, 'g'))?.length ?? 0;

  await leaveAt(1, () => true);
  await act('Start a new plan');
  await user.tap(user.button('Start this plan'));
  await leaveAt(2, (text) => text.includes('"name": "Panel van"'));
  const box = await user.pane('Whole vehicle').boundingBox();
  if (box === null) throw new Error('No pane');
  const on = (x: number, y: number) => ({ x: box.x + box.width * x, y: box.y + box.height * y });
  const [battery, amplifier, ground] = [on(0.16, 0.56), on(0.75, 0.45), on(0.75, 0.62)];

  await act('Take a battery');
  await finger.tap(battery);
  await leaveAt(3, (text) => count(text, 'battery') === 1);
  await act('Take an amplifier');
  await finger.tap(amplifier);
  await act('Enter its output');
  await user.write(user.field(/^Rated output/), '500');
  await leaveAt(4, (text) => /"ratedW": \{\s*"value": 500/.test(text));

  await act('Let it be proposed');
  await card.getByRole('button', { name: 'Accept what is proposed', exact: true }).waitFor();
  // what is only proposed is no step done
  await leaveAt(4, (text) => count(text, 'fuse') === 0);
  await act('Accept what is proposed');
  await leaveAt(6, (text) => count(text, 'fuse') === 1);
  // the ground that came with it is taken out again: that step is then open, and done by hand
  await selectInList(user, 'Ground point');
  await user.tap(page.getByRole('region', { name: 'Selected' }).getByRole('button', { name: 'Delete', exact: true }));
  await leaveAt(5, (text) => !text.includes('"terminal": "body"'));
  await act('Take a ground point');
  await finger.tap(ground);
  await act('Draw the ground cable');
  await finger.tap(amplifier);
  const terminals = page.getByRole('group', { name: 'Terminals of Amplifier', exact: true });
  await user.tap(terminals.getByRole('button', { name: /ground|negative/ }));
  await finger.tap(ground);
  await leaveAt(6, (text) => text.includes('"terminal": "body"'));

  await act('Enter a length');
  // from the battery to its fuse: a longer one would be unprotected, and the feed not done
  await user.write(user.field(/^Taped length/), '24 cm');
  await leaveAt(7, (text) => text.includes('"tapedM": 0.24'));
  expect(await card.locator('[data-state="done"]').count()).toBe(6);
  const [last, depth] = [await savedText(page), await undoDepth(page)];
  await act('Done');
  await card.waitFor({ state: 'detached' });
  expect(await savedText(page)).toBe(last);
  expect(await undoDepth(page)).toBe(depth);
  opened.expectClean();
}, 90_000);

it('on a phone, asked for in the answer pulled up, comes into sight: the answer is lowered', async () => {
  const opened = await openForTest('phone');
  const { page } = opened;
  const user = new TouchUser(opened);
  await untilText(page, /\d to stop for/);
  await user.tap(user.button('Show the whole answer'));
  await user.tap(user.button('Show me'));
  const card = page.getByRole('complementary', { name: 'First plan' });
  await card.getByRole('heading', { name: /^Step 1 of 7/ }).waitFor();
  await drawn(page);
  expect(await user.button('Show the whole answer').getAttribute('aria-expanded')).toBe('false');
  // nothing lies over it: its button answers to one tap
  await user.tap(card.getByRole('button', { name: 'Start a new plan', exact: true }));
  await page.getByRole('dialog', { name: 'New plan' }).waitFor();
  // pulled up again, the answer stays up while the guide goes on under it
  await page.keyboard.press('Escape');
  await user.tap(user.button('Show the whole answer'));
  await drawn(page);
  expect(await user.button('Show the sketch').getAttribute('aria-expanded')).toBe('true');
  opened.expectClean();
});
