import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { broken, clipped, layoutFaults, overlaps } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { SAID } from './support/said.ts';
import { openDialog, selectFirst } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** What has to keep its room on a small screen: the verdict, the keys, the state of saving, and what a message must not cover. */

async function visit(screen: ViewportName, locale: 'en' | 'de' = 'en'): Promise<TouchUser> {
  const opened = await openForTest(screen, { locale });
  await untilText(opened.page, SAID[locale].oneToStopFor);
  return new TouchUser(opened);
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

async function boxOf(locator: Locator): Promise<Box> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error('It is not there.');
  return { left: box.x, top: box.y, right: box.x + box.width, bottom: box.y + box.height };
}

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const answer = (user: TouchUser): Locator => user.page.getByRole('region', { name: 'Answer' });
/** What was not told stands under every verdict, in short where there is little room. */
const notTold = (user: TouchUser): Locator =>
  answer(user)
    .getByText(/^\d+ matters? not told/)
    .filter({ visible: true });

/** Lines of one row: their middles are within a pixel of one another. */
const middleY = ({ top, bottom }: Box): number => (top + bottom) / 2;

describe('a message', () => {
  const message = (user: TouchUser) => user.page.locator('[data-message]');

  /** Deletes what is selected, and lowers the answer where it is a sheet. */
  async function remove(user: TouchUser): Promise<void> {
    await selectFirst(user, 'Amplifiers');
    await user.tap(user.button('Delete'));
    await message(user).waitFor();
    const down = user.button('Show the sketch');
    if (await down.isVisible()) await user.tap(down);
    await drawn(user.page);
  }

  it.each(['tablet', 'tabletPortrait', 'phone', 'phoneSideways'] as const)(
    'lies on the sketch alone: %s',
    async (screen) => {
      const user = await visit(screen);
      await remove(user);
      const box = await boxOf(message(user));
      const others = [
        answer(user),
        user.page.getByRole('banner'),
        user.page.getByRole('complementary', { name: 'Tools' }),
      ];
      for (const [index, other] of others.entries())
        expect([index, meet(box, await boxOf(other))]).toEqual([index, false]);
      const buttons = await Promise.all((await message(user).getByRole('button').all()).map(boxOf));
      expect(buttons).toHaveLength(2);
      for (const button of buttons) expect(middleY(button)).toBeCloseTo(middleY(box), 0);
    },
  );

  it('lies under the menu that is opened while it is there', async () => {
    const user = await visit('phone');
    await remove(user);
    await user.tap(user.button('Menu'));
    for (const name of ['New plan', 'Plans', 'Save file', 'List', 'Alternatives', 'Settings', 'Legend', 'Work view']) {
      const isOnTop = await user.button(name).evaluate((button) => {
        const { x, y, width, height } = button.getBoundingClientRect();
        return button.contains(document.elementFromPoint(x + width / 2, y + height / 2));
      });
      expect([name, isOnTop]).toEqual([name, true]);
    }
  });
});

describe('the verdict', () => {
  it('stands whole over the button for what is selected, on a phone, however long it is', async () => {
    const user = await visit('phone');
    await selectFirst(user, 'Runs');
    await user.tap(user.button('Show the sketch'));
    expect(await notTold(user).count()).toBe(1);
    const line = answer(user).getByRole('heading', { level: 2 }).first().locator('span').last();
    for (const verdict of ['Provisional: 12 lengths to tape', 'Nothing found against the vehicle rule set']) {
      await line.evaluate((element, text) => {
        element.textContent = text;
      }, verdict);
      await drawn(user.page);
      const text = await line.evaluate((element) => {
        const range = document.createRange();
        range.selectNodeContents(element);
        const { left, top, right, bottom } = range.getBoundingClientRect();
        return { left, top, right, bottom };
      });
      const sheet = await boxOf(answer(user));
      expect(text.top).toBeGreaterThanOrEqual(sheet.top);
      expect(text.right).toBeLessThanOrEqual(sheet.right);
      const edit = await boxOf(user.button('Edit what is selected'));
      expect(edit.top).toBeGreaterThanOrEqual(text.bottom);
      expect(edit.bottom).toBeLessThanOrEqual(VIEWPORTS.phone.height);
      expect(meet(text, await boxOf(user.button('Show the whole answer')))).toBe(false);
      expect([verdict, ...(await overlaps(user.page)), ...(await clipped(user.page))]).toEqual([verdict]);
    }
  });
});

describe('a phone held sideways', () => {
  it('keeps a sketch to work on and the answer beside it; the tools come from their drawer', async () => {
    const user = await visit('phoneSideways');
    const { height } = VIEWPORTS.phoneSideways;
    const sketch = await boxOf(user.pane('Engine bay'));
    expect(sketch.bottom - sketch.top).toBeGreaterThan(0.75 * height);
    const column = await boxOf(answer(user));
    expect(column.left).toBeGreaterThanOrEqual(sketch.right);
    expect(column.bottom - column.top).toBeGreaterThan(0.75 * height);
    expect(await notTold(user).count()).toBe(1);
    const figure = await boxOf(user.page.getByRole('list', { name: 'Figures' }).getByText('175 A'));
    expect(figure.bottom).toBeLessThanOrEqual(height);

    await user.tap(user.button('Tools'));
    await user.take('Fuse', 'Fittings');
    expect(await user.page.getByRole('radio', { name: 'Fuse' }).isVisible()).toBe(false);
    await selectFirst(user, 'Runs');
    const fields = await boxOf(user.field('Taped length'));
    expect(fields.top).toBeGreaterThan(column.top);
    expect(fields.bottom).toBeLessThanOrEqual(height);
  });
});

describe('the keypad in feet and inches', () => {
  it.each(['tablet', 'tabletPortrait', 'phone'] as const)(
    'is whole under its field and what is wrong with it: %s',
    async (screen) => {
      const user = await visit(screen);
      await openDialog(user, 'Settings');
      await user.choose(user.page.getByRole('dialog').getByLabel('Lengths in'), 'Feet and inches');
      await user.tap(user.page.getByRole('dialog').getByRole('button', { name: 'Close' }));
      await selectFirst(user, 'Runs');
      await user.tap(user.button('Keypad: Taped length'));
      const keys = user.page.getByRole('group', { name: /Taped length/ });
      for (const key of ['/', '/', 'Done']) await user.tap(keys.getByRole('button', { name: key, exact: true }));
      const wrong = await boxOf(user.page.getByRole('alert'));
      const field = await boxOf(user.field('Taped length'));
      const parts = await Promise.all((await keys.getByRole('button').all()).map(boxOf));
      // 10 digits, point and stroke, four parts of an inch, five units, Clear, Space, Done and the one to delete
      expect(parts).toHaveLength(25);
      const inspector = await boxOf(user.page.getByRole('region', { name: 'Selected' }).getByRole('heading').first());
      expect(field.top).toBeGreaterThan(inspector.bottom);
      expect(wrong.top).toBeGreaterThanOrEqual(field.bottom);
      expect(Math.min(...parts.map(({ top }) => top))).toBeGreaterThanOrEqual(wrong.bottom);
      expect(Math.max(...parts.map(({ bottom }) => bottom))).toBeLessThanOrEqual(VIEWPORTS[screen].height);
    },
  );
});

describe('the keypad on a phone held sideways', () => {
  it.each([
    ['Metres and centimetres', 21],
    ['Feet and inches', 25],
  ] as const)('is whole under its field, with keys as large as everywhere: %s', async (unit, keys) => {
    const screen = 'phoneSideways';
    const user = await visit(screen);
    await openDialog(user, 'Settings');
    await user.choose(user.page.getByRole('dialog').getByLabel('Lengths in'), unit);
    await user.tap(user.page.getByRole('dialog').getByRole('button', { name: 'Close' }));
    await selectFirst(user, 'Runs');
    await user.tap(user.button('Keypad: Taped length'));
    const pad = user.page.getByRole('group', { name: /Taped length/ });
    await pad.waitFor();
    await drawn(user.page);
    const keysUnder = async (above: Locator) => {
      const parts = await Promise.all((await pad.getByRole('button').all()).map(boxOf));
      const field = await boxOf(user.field('Taped length'));
      expect(field.top).toBeGreaterThanOrEqual(0);
      expect(Math.min(...parts.map(({ top }) => top))).toBeGreaterThanOrEqual((await boxOf(above)).bottom);
      expect(Math.max(...parts.map(({ bottom }) => bottom))).toBeLessThanOrEqual(VIEWPORTS[screen].height);
      for (const { left, right, top, bottom } of parts)
        expect(Math.min(right - left, bottom - top)).toBeGreaterThanOrEqual(56);
      return parts;
    };
    expect(await keysUnder(user.field('Taped length'))).toHaveLength(keys);
    expect(await layoutFaults(user.page)).toEqual([]);
    for (const key of ['/', '/', 'Done']) await user.tap(pad.getByRole('button', { name: key, exact: true }));
    await keysUnder(user.page.getByRole('alert'));
    expect(await layoutFaults(user.page)).toEqual([]);
  });
});

describe('the state of saving', () => {
  it.each([
    ['en', 'Kept', 'Kept in this browser'],
    ['de', 'Gespeichert', 'In diesem Browser gespeichert'],
  ] as const)('is a word that is never cut: %s', async (locale, short, long) => {
    const user = await visit('tablet', locale);
    const sign = user.page.locator('.save-sign');
    const isWhole = () =>
      sign.evaluate((element) => {
        const { right } = element.getBoundingClientRect();
        return element.scrollWidth <= element.clientWidth && right <= innerWidth;
      });
    const isWholeOn = async (screen: 'tablet' | 'phone') => {
      await user.page.setViewportSize(VIEWPORTS[screen]);
      await drawn(user.page);
      expect([screen, await isWhole()]).toEqual([screen, true]);
      expect([screen, ...(await overlaps(user.page)), ...(await clipped(user.page))]).toEqual([screen]);
    };
    for (const screen of ['tablet', 'phone'] as const) await isWholeOn(screen);
    await user.write(user.page.locator('.plan-name'), 'A name that is longer than what the row has room for');
    await sign.getByText(short, { exact: true }).waitFor();
    expect(await sign.getByText(long, { exact: true }).count()).toBe(1);
    expect(await sign.getAttribute('title')).toBe(long);
    for (const screen of ['phone', 'tablet'] as const) await isWholeOn(screen);
  });
});

describe('the row at the top', () => {
  it.each(['en', 'de'] as const)('is whole on the narrowest tablet that has its buttons: %s', async (locale) => {
    const user = await visit('tablet', locale);
    for (const width of [1000, 1024, 1100]) {
      await user.page.setViewportSize({ width, height: 768 });
      await drawn(user.page);
      expect([width, ...(await clipped(user.page)), ...(await overlaps(user.page))]).toEqual([width]);
    }
  });
});

describe('fields side by side', () => {
  it('stand in line: label by label and input by input', async () => {
    const user = await visit('tablet');
    const bottomOf = async (text: string) =>
      (
        await boxOf(
          user.page.getByRole('region', { name: 'Selected' }).locator('label').filter({ hasText: text }).first(),
        )
      ).bottom;
    await selectFirst(user, 'Runs');
    expect(await notTold(user).count()).toBe(1);
    const [rise, slack] = [await boxOf(user.field('Rise and drop')), await boxOf(user.field('Slack, %'))];
    expect(slack.top).toBeCloseTo(rise.top, 0);
    expect(await bottomOf('Slack')).toBeCloseTo(await bottomOf('Rise and drop'), 0);
  });
});

describe('a sheet over a column', () => {
  /** What is not modal has no veil, and leaves the page beside it in use. */
  const isModal = (dialog: Locator) => dialog.evaluate((element) => element.matches(':modal'));

  it('puts no veil over the page, leaves the sketch to be seen, and gives the focus back', async () => {
    const user = await visit('tablet');
    for (const screen of ['tablet', 'tabletPortrait', 'phone', 'phoneSideways'] as const) {
      await user.page.setViewportSize(VIEWPORTS[screen]);
      await drawn(user.page);
      const sketch = await boxOf(user.page.getByRole('main'));
      for (const [button, title, most] of [
        ['Work view', 'View', 0.65],
        ['Settings', 'Settings', 0.7],
        ['Legend', 'Legend', 0.7],
      ] as const) {
        await openDialog(user, button, title);
        const dialog = user.page.getByRole('dialog', { name: title });
        expect(await isModal(dialog)).toBe(false);
        const sheet = await boxOf(dialog);
        const width = Math.max(0, Math.min(sheet.right, sketch.right) - Math.max(sheet.left, sketch.left));
        const height = Math.max(0, Math.min(sheet.bottom, sketch.bottom) - Math.max(sheet.top, sketch.top));
        const area = (sketch.right - sketch.left) * (sketch.bottom - sketch.top);
        expect([screen, title, (width * height) / area < most]).toEqual([screen, title, true]);
        // beside it, where the sketch is
        const tapped = { x: sketch.right - 20, y: sketch.top + 20 };
        if (screen === 'phone') await user.page.keyboard.press('Escape');
        else await user.opened.finger.tap(tapped);
        await dialog.waitFor({ state: 'detached' });
        const focused = await user.page.evaluate(() => document.activeElement?.textContent);
        expect(focused).toBe((await user.button(button).isVisible()) ? button : 'Menu');
      }
    }
  });
});

it.each(['en', 'de'] as const)(
  'a figure stands on one line with its unit, on the narrowest panel: %s',
  async (locale) => {
    const opened = await openForTest('phoneSideways', { locale });
    const { page } = opened;
    await untilText(page, SAID[locale].oneToStopFor);
    const figures = page.locator(
      '.run-table :is([data-field="length"] .figure, [data-field="drop"] .figure, [data-field="current"] > *)',
    );
    await expect.poll(() => figures.count()).toBeGreaterThan(20);
    expect(await broken(figures)).toEqual([]);
    opened.expectClean();
  },
);

describe('a length in feet', () => {
  /** What stands in fields for lengths and is not seen whole. */
  const cut = (fields: Locator): Promise<string[]> =>
    fields.evaluateAll((inputs) =>
      inputs.flatMap((input) =>
        input instanceof HTMLInputElement && input.scrollWidth > input.clientWidth ? [input.value] : [],
      ),
    );

  async function visitInFeet(screen: ViewportName): Promise<TouchUser> {
    const opened = await openForTest(screen, { locale: 'en-US' });
    await untilText(opened.page, SAID.en.oneToStopFor);
    return new TouchUser(opened);
  }

  it('is whole in every field of a new plan, on a phone', async () => {
    const user = await visitInFeet('phone');
    await openDialog(user, 'New plan');
    const dialog = user.page.getByRole('dialog', { name: 'New plan' });
    await user.tap(dialog.getByText('Sizes', { exact: true }));
    const fields = dialog.locator('.length-field input');
    expect(await fields.count()).toBeGreaterThan(5);
    expect(await cut(fields)).toEqual([]);
    expect(await fields.first().inputValue()).toMatch(/ ft .* in$/);
  });

  it.each(['tablet', 'phone'] as const)('is whole in the fields of what is selected: %s', async (screen) => {
    const user = await visitInFeet(screen);
    for (const [of, least] of [
      ['Amplifiers', 2],
      ['Runs', 2],
    ] as const) {
      await selectFirst(user, of);
      const fields = user.page.getByRole('region', { name: 'Selected' }).locator('.length-field input');
      expect(await fields.count()).toBeGreaterThanOrEqual(least);
      expect([of, ...(await cut(fields))]).toEqual([of]);
      expect([of, ...(await clipped(user.page))]).toEqual([of]);
    }
  });
});
