import { describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import type { Place } from '../support/finger.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { metres, savedText, untilSaved } from './support/reading.ts';
import type { At } from './support/route.ts';
import { type PaneName, TouchUser } from './support/touch.ts';

/** Two cables between the same two fittings, drawn by touch straight along the same line: each can be tapped and bent. */
const [WHOLE, BAY] = ['Whole vehicle', 'Engine bay'] as const;
const BATTERY: At = { xM: 0.8, yM: 1 };
const AMPLIFIER: At = { xM: 2.8, yM: 1 };
const [FEED, RETURN] = ['First cable', 'Second cable'] as const;
/** Half of a lane: the way from the line that both share to either of them, px. */
const ASIDE_PX = 11;

let opened: OpenedPage;
let user: TouchUser;

openForAll(async (shared) => {
  opened = shared;
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
  await user.tap(user.button('New plan'));
  const dialog = user.page.getByRole('dialog', { name: 'New plan' });
  await user.tap(dialog.getByText('Panel van', { exact: true }));
  await user.tap(dialog.getByRole('button', { name: 'Start this plan' }));
  await untilText(user.page, 'Nothing drawn yet');
  await user.learn(WHOLE);
  await user.place({ kind: 'Battery', at: BATTERY }, WHOLE);
  await user.place({ kind: 'Amplifier', at: AMPLIFIER }, WHOLE);
  await user.learn(BAY);
  await cable(['positive', 'supply'], FEED);
  await cable(['negative', 'ground'], RETURN);
  await user.take('Move', 'The hand');
  await drawn(user.page);
});

const heading = () => user.page.getByRole('region', { name: 'Selected' }).getByRole('heading', { level: 2 });

/** A place on a screen's pane, moved by px up (below 0) or down. */
function beside(at: At, pane: PaneName, byPx: number): Place {
  const { x, y } = user.spot(at, pane);
  return { x, y: y + byPx };
}

async function cable(terminals: readonly [string, string], name: string): Promise<void> {
  await user.take('Run', 'The hand');
  const [from, to] = terminals;
  await user.join(
    { from: { fitting: 'Battery', terminal: from }, to: { fitting: 'Amplifier', terminal: to }, bends: [] },
    [BATTERY, AMPLIFIER],
    [WHOLE, WHOLE],
  );
  await user.write(user.field('Name'), name);
}

describe('of two cables on one line', () => {
  it.each([
    [WHOLE, 1.5],
    [BAY, 1.1],
  ] as const)('the one that is tapped is named, on either side of that line: %s', async (pane, xM) => {
    const saved = JSON.parse((await savedText(user.page)) ?? '');
    // as drawn: straight, both between the same two places
    expect(saved.runs.map((run: { bends: unknown[] }) => run.bends)).toEqual([[], []]);
    for (const [byPx, name] of [
      [-ASIDE_PX, FEED],
      [ASIDE_PX, RETURN],
      [-ASIDE_PX, FEED],
    ] as const) {
      await opened.finger.tap(beside({ xM, yM: 1 }, pane, byPx));
      await expect.poll(() => heading().innerText()).toBe(name);
      // of the way from fitting to fitting, not of the way round each other
      expect(metres(await user.page.getByText(/^Drawn \d/).innerText())).toBe(2);
    }
    opened.expectClean();
  });

  it('the one that is dragged bends, and the other is alone on the line', async () => {
    const [from, to]: [At, At] = [
      { xM: 1.8, yM: 1 },
      { xM: 1.8, yM: 1.4 },
    ];
    await opened.finger.drag(beside(from, WHOLE, -ASIDE_PX), beside(to, WHOLE, 0));
    const text = await untilSaved(user.page, (now) => JSON.parse(now).runs[0].bends.length === 1);
    expect(JSON.parse(text).runs.map((run: { bends: unknown[] }) => run.bends)).toEqual([[to], []]);
    // on nothing: the button for the bend goes away, which lies over the other cable
    await opened.finger.tap(beside({ xM: 3.6, yM: 0.4 }, WHOLE, 0));
    await opened.finger.tap(beside({ xM: 1.5, yM: 1 }, WHOLE, 0));
    await expect.poll(() => heading().innerText()).toBe(RETURN);
    opened.expectClean();
  });
});
