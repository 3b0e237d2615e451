/**
 * Gestures at random in the built page, from a seed: no error, the plan always opens again, and undo to the start gives
 * the first bytes. `npm test` tries some, the long form 2,000.
 */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn, untilText } from '../support/reading.ts';
import { Monkey } from './support/monkey.ts';
import { openForTest } from './support/opening.ts';
import { savedText, undoButton, undoDepth, untilSaved } from './support/reading.ts';
import { TouchUser } from './support/touch.ts';

const IS_LONG = process.env.FEEDRUN_LONG === '1';
const GESTURES = IS_LONG ? 2_000 : 60;
/** Far fewer gestures than that change anything, some of which is undone again: so many at least do. */
const LEAST_CHANGES = GESTURES / 20;
/** Between looks at the whole: fewer than the history holds. */
const ROUND = 60;
const SEED = 20_261_126;

/** What is kept once nothing is left to write. */
async function settled(page: Page): Promise<string> {
  await drawn(page);
  await page.locator('.save-sign:not(.save-saving)').waitFor({ state: 'attached' });
  return (await savedText(page)) ?? '';
}

it(
  `${GESTURES} gestures at random leave a plan that opens again, and undo leads back to its first bytes`,
  async () => {
    const opened = await openForTest();
    const user = new TouchUser(opened);
    const { page } = opened;
    const log: string[] = [];
    try {
      await untilText(page, 'Longest unprotected');
      // the first change makes the example a plan of one's own
      await user.write(page.getByLabel('Plan name'), 'Monkey');
      let first = await untilSaved(page, (text) => text.includes('"name": "Monkey"'));
      await page.reload();
      await untilText(page, 'Longest unprotected');
      const monkey = await Monkey.on(opened, SEED);
      let changes = 0;
      for (let done = 0; done < GESTURES; done += ROUND) {
        let depth = 0;
        for (let count = 0; count < ROUND; count += 1) {
          const did = await monkey.gesture();
          log.push(did);
          const before = depth;
          depth = await undoDepth(page);
          if (did !== 'undo or redo') changes += Math.max(0, depth - before);
        }
        await monkey.rest();
        opened.expectClean();
        const last = await settled(page);
        const steps = await undoDepth(page);
        if (steps === 0) expect(last).toBe(first);
        for (let left = steps; left > 0; left -= 1) await user.tap(undoButton(page));
        expect(await undoDepth(page)).toBe(0);
        expect(await settled(page)).toBe(first);
        for (let left = steps; left > 0; left -= 1) await page.keyboard.press('Control+Shift+z');
        expect(await settled(page)).toBe(last);
        await page.reload();
        await untilText(page, /Longest unprotected|Nothing drawn yet/);
        expect(await settled(page)).toBe(last);
        first = last;
      }
      // hands that change nothing would prove nothing
      expect(changes).toBeGreaterThanOrEqual(LEAST_CHANGES);
      opened.expectClean();
    } catch (error) {
      throw new Error(`After ${log.length} gestures, the last: ${log.slice(-6).join('; ')}\n${String(error)}`, {
        cause: error,
      });
    }
  },
  IS_LONG ? 900_000 : 90_000,
);
