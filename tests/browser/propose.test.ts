import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { type OpenedPage, VIEWPORTS } from '../support/browser.ts';
import { middleOf, type Place } from '../support/finger.ts';
import { overlaps, smallTargets } from '../support/layout.ts';
import { drawn, textOf, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { headline, metres, savedText, undoButton, undoDepth, untilSaved } from './support/reading.ts';
import { SAID } from './support/said.ts';
import { selectInList } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';
import { ownWalk } from './support/walk.ts';

/** Until a tap on what can be done counts: one that comes too soon was meant for what stood there before. */
const settled = (page: Page): Promise<void> => page.locator('.sketch-propose:not([data-quiet])').waitFor();

/** A hatchback with a battery and two amplifiers, told and joined by nothing. */
async function placed(): Promise<{ opened: OpenedPage; user: TouchUser; on: (x: number, y: number) => Place }> {
  const opened = await openForTest();
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
  await settled(page);
  return { opened, user, on };
}

it('proposes a feed for what is placed: bent, refused in part, accepted, each step taken back', async () => {
  const { opened, user } = await placed();
  const { page } = user;
  const { finger } = opened;
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
  const panes = () =>
    page.locator('.sketch-pane').evaluateAll((all) => all.map((pane) => JSON.stringify(pane.getBoundingClientRect())));
  const asked = await panes();
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await settled(page);
  await page.getByText('As proposed: not in the plan yet').waitFor();
  expect(await undoDepth(page)).toBe(before + 1);
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overlaps(page)).toEqual([]);
  expect(await axe(page)).toEqual([]);

  // the block, a ghost, is bent to where it fits the car
  const block = await tapBeside('Distribution block', 'Distribution block: one cable feeds');
  await finger.drag(block, { x: block.x - 20, y: block.y + 16 });
  await page.getByText('Distribution block: moved by you').waitFor();
  expect(await undoDepth(page)).toBe(before + 2);
  await user.tap(page.getByRole('button', { name: 'Undo: move Distribution block' }));
  await page.getByText('Distribution block: one cable feeds').waitFor();
  await user.tap(page.getByRole('button', { name: 'Redo: move Distribution block' }));
  await page.getByText('Distribution block: moved by you').waitFor();

  await tapBeside('Ground point', 'a short way back beside it');
  await page.getByText('a short way back beside it').waitFor();
  await settled(page);
  // what is done with it lies beside the panes, which stay as they were
  expect(await panes()).toEqual(asked);
  const labels = await page.locator('.sketch-label[data-proposed]').count();
  await user.tap(user.button('Refuse'));
  await page.getByText('2 parts refused.').waitFor();
  expect(await headline(page)).toMatch(/to fix/);
  await user.tap(page.locator('.message').getByRole('button', { name: 'Undo' }));
  await drawn(page);
  expect(await page.locator('.sketch-label[data-proposed]').count()).toBe(labels);
  expect(await undoDepth(page)).toBe(before + 2);
  await settled(page);
  await user.tap(user.button('Refuse all'));
  await page.getByText(/^\d+ parts refused\.$/).waitFor();
  await settled(page);
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await settled(page);
  const depth = await undoDepth(page);
  await user.tap(user.button('Accept all'));
  await drawn(page);
  expect(await textOf(page)).not.toContain('As proposed');
  expect(await headline(page)).not.toMatch(/to stop for|to fix/);
  expect(await undoDepth(page)).toBe(depth + 1);
  await user.tap(page.getByRole('button', { name: /^Undo: accept/ }));
  await page.getByText('As proposed: not in the plan yet').waitFor();
  expect(await undoDepth(page)).toBe(depth);
  await user.tap(page.getByRole('button', { name: /^Undo: propose/ }));
  await page.getByRole('button', { name: 'Propose feed' }).waitFor();
  opened.expectClean();
}, 60_000);

it('keeps what is proposed, and what was entered on it, over a reload; a double tap refuses none of it', async () => {
  const { opened, user } = await placed();
  const { page } = user;
  const ask = await middleOf(user.button('Propose feed'));
  await settled(page);
  await opened.finger.tap(ask);
  await opened.finger.tap(ask);
  await page.getByText(/12 proposed\. Tap one/).waitFor();
  await settled(page);
  const openRun = async () => {
    await user.tap(user.button('List'));
    await user.tap(page.getByRole('button', { name: /^Battery to main fuse/i }).first());
  };
  await openRun();
  await user.write(user.field(/^Taped length/), '9 in');
  const taped = await user.field(/^Taped length/).inputValue();
  expect(metres(taped)).toBeCloseTo(0.2286, 3);
  await page.getByText(/^Kept/).first().waitFor();
  await page.reload();
  await page.getByText('As proposed: not in the plan yet').waitFor();
  await page.getByText(/12 proposed\. Tap one/).waitFor();
  await settled(page);
  await openRun();
  expect(await user.field(/^Taped length/).inputValue()).toBe(taped);
  opened.expectClean();
}, 60_000);

it('accepts one part alone, and a bent run as it was bent; each is taken back to the byte', async () => {
  const { opened, user, on } = await placed();
  const { page } = user;
  page.setDefaultTimeout(6000);
  const acceptButton = page
    .getByRole('region', { name: 'Proposed feed' })
    .getByRole('button', { name: 'Accept', exact: true });
  const left = (count: number) => page.getByText(`${count} proposed. Tap one`).waitFor();
  const kinds = (text: string, kind: string) => text.match(new RegExp(`"kind": "${kind}"`, 'g'))?.length ?? 0;
  const own = await untilSaved(page, (text) => kinds(text, 'amplifier') === 2 && text.includes('"value": 300'));
  await user.tap(user.button('Propose feed'));
  await left(12);
  await settled(page);
  const depth = await undoDepth(page);

  await selectInList(user, 'Distribution block');
  await user.tap(acceptButton);
  const withBlock = await untilSaved(page, (text) => text !== own);
  expect(kinds(withBlock, 'block')).toBe(1);
  expect(kinds(withBlock, 'fuse') + kinds(withBlock, 'ground') + kinds(withBlock, 'power')).toBe(0);
  await left(11);
  expect(await undoDepth(page)).toBe(depth + 1);
  await page.getByText('As proposed: not in the plan yet').waitFor();
  await user.tap(undoButton(page));
  await expect.poll(() => savedText(page)).toBe(own);
  expect(await undoDepth(page)).toBe(depth);

  // where things are on the screen follows from two that were tapped in place
  await selectInList(user, 'Battery');
  const battery = { px: on(0.16, 0.56), at: await user.placeInFields() };
  await selectInList(user, 'Amplifier');
  const amplifier = { px: on(0.85, 0.45), at: await user.placeInFields() };
  const pxPerM = (amplifier.px.x - battery.px.x) / (amplifier.at.xM - battery.at.xM);
  const run = 'Pass-through to distribution block';
  const bendFields = async () => {
    await selectInList(user, run);
    await user.tap(page.getByRole('region', { name: 'Selected' }).getByRole('button', { name: 'Bend 1', exact: true }));
    return user.placeInFields();
  };
  const bend = await bendFields();
  const [from, byPx] = [
    {
      x: amplifier.px.x + (bend.xM - amplifier.at.xM) * pxPerM,
      y: amplifier.px.y + (bend.yM - amplifier.at.yM) * pxPerM,
    },
    40,
  ];
  await opened.finger.drag(from, { x: from.x + byPx, y: from.y });
  await page.getByRole('button', { name: /^Undo: move a bend of/ }).waitFor();
  expect(await undoDepth(page)).toBe(depth + 1);
  const bent = await bendFields();
  // to the next line of the grid
  expect(Math.abs(bent.xM - bend.xM - byPx / pxPerM)).toBeLessThan(0.1);
  expect(await savedText(page)).toBe(own);
  await selectInList(user, run);
  await user.tap(acceptButton);
  // the run stands with what is at its ends
  await left(9);
  const withRun = await untilSaved(page, (text) => text !== own);
  const kept = JSON.parse(withRun);
  expect(kept.runs).toHaveLength(1);
  expect(kept.fittings).toHaveLength(5);
  expect(kept.runs[0].bends[0].xM).toBeCloseTo(bent.xM, 2);
  expect(await undoDepth(page)).toBe(depth + 2);
  await user.tap(undoButton(page));
  await expect.poll(() => savedText(page)).toBe(own);
  await user.tap(undoButton(page));
  expect(await undoDepth(page)).toBe(depth);
  expect(await bendFields()).toEqual(bend);
  opened.expectClean();
}, 90_000);

/** The example with nothing but its battery and amplifiers, each of which asks for more than one battery gives. */
async function tooMuch(): Promise<string> {
  const response = await fetch(new URL('demo.plan.json', inject('pageUrl')));
  const plan: { fittings: readonly { kind: string }[] } = JSON.parse(await response.text());
  const fittings = plan.fittings
    .filter(({ kind }) => kind === 'battery' || kind === 'amplifier')
    .map((one) => (one.kind === 'amplifier' ? { ...one, ratedW: { value: 2500, origin: 'told' } } : one));
  return JSON.stringify({ ...plan, fittings, runs: [] });
}

it.each([
  ['en', 'Left to settle', SAID.en],
  ['en-GB', 'Left to settle', SAID.en],
  ['de', 'Offen bleib', SAID.de],
] as const)('all that is said of a proposal is read by thumb on a phone: %s', async (locale, left, said) => {
  const opened = await openForTest('tablet', { locale });
  const { page, finger } = opened;
  const user = new TouchUser(opened);
  const unfed = { name: 'unfed.plan.json', buffer: Buffer.from(await tooMuch()) };
  for (const [state, bring] of ownWalk(user, said, unfed)) if (state === 'a proposal') await bring();
  const text = page.locator('.sketch-propose [role="status"]');
  await text.getByText(left).waitFor();
  for (const screen of ['phone', 'phoneSideways'] as const) {
    await page.setViewportSize(VIEWPORTS[screen]);
    await drawn(page);
    const box = await text.boundingBox();
    if (box === null) throw new Error('Nothing is said of the proposal.');
    const acts = page.locator('.sketch-acts button');
    const before = await acts.evaluateAll((all) => all.map((one) => JSON.stringify(one.getBoundingClientRect())));
    /** The lines of it that are in sight, by how far down they stand in all of it; whole but for a pixel. */
    const seen = () =>
      text.evaluate((element) => {
        const range = document.createRange();
        range.selectNodeContents(element);
        const { top, bottom } = element.getBoundingClientRect();
        const halfPx = Number.parseFloat(getComputedStyle(element).lineHeight) / 2 - 1;
        const middles = [...range.getClientRects()]
          .filter(({ width }) => width > 0)
          .map((line) => (line.top + line.bottom) / 2);
        const whole = middles.filter((y) => y - halfPx >= top && y + halfPx <= bottom);
        return whole.map((y) => Math.round(y + element.scrollTop - top));
      });
    const lines = await text.evaluate((element) => {
      element.scrollTop = 0;
      return Math.round(element.scrollHeight / Number.parseFloat(getComputedStyle(element).lineHeight));
    });
    const read = new Set(await seen());
    const x = box.x + box.width / 2;
    for (let stroke = 0; stroke < lines && read.size < lines; stroke += 1) {
      await finger.drag({ x, y: box.y + box.height - 4 }, { x, y: box.y + box.height - 40 });
      for (const line of await seen()) read.add(line);
    }
    expect(lines, screen).toBeGreaterThan(3);
    expect(read.size, screen).toBe(lines);
    expect(await acts.evaluateAll((all) => all.map((one) => JSON.stringify(one.getBoundingClientRect())))).toEqual(
      before,
    );
    expect(await overlaps(page), screen).toEqual([]);
  }
  opened.expectClean();
});
