import { describe, expect, it } from 'vitest';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { savedText, untilSaved } from './support/reading.ts';
import { selectFirst } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** A run selected, and the keypad open for its length. */
async function withKeypad(screen: 'tablet' | 'phone') {
  const opened = await openForTest(screen);
  const user = new TouchUser(opened);
  await untilText(user.page, /\d to stop for/);
  await selectFirst(user, 'Runs');
  await user.tap(user.button('Keypad: Taped length'));
  const keypad = user.page.getByRole('group', { name: 'Keypad for Taped length' });
  await keypad.waitFor();
  await drawn(user.page);
  const panel = user.page.getByRole('region', { name: 'Selected' });
  return { ...opened, user, keypad, panel, closing: panel.getByRole('button', { name: 'Close', exact: true }) };
}

describe.each(['tablet', 'phone'] as const)('on a %s, while the keypad is open', (screen) => {
  it('one tap closes the panel', async () => {
    const { user, panel, closing, expectClean } = await withKeypad(screen);
    await user.tap(closing);
    await drawn(user.page);
    expect(await panel.count()).toBe(0);
    expectClean();
  });

  it('one tap closes the panel and takes what was typed', async () => {
    const { user, panel, keypad, closing, expectClean } = await withKeypad(screen);
    const key = (name: string) => user.tap(keypad.getByRole('button', { name, exact: true }));
    for (const name of ['Clear', '3', '5', 'cm']) await key(name);
    expect((await savedText(user.page)) ?? '').not.toContain('"tapedM": 0.35');
    await user.tap(closing);
    await drawn(user.page);
    expect(await panel.count()).toBe(0);
    await untilSaved(user.page, (text) => text.includes('"tapedM": 0.35'));
    expectClean();
  });

  it('a tap beside its field puts the keypad away', async () => {
    const { user, panel, keypad, expectClean } = await withKeypad(screen);
    await user.tap(panel.getByRole('heading').first());
    await keypad.waitFor({ state: 'detached' });
    expect(await panel.count()).toBe(1);
    expectClean();
  });
});

it('one click of a mouse closes the panel while the keypad is open', async () => {
  const { page, panel, closing, expectClean } = await withKeypad('tablet');
  const box = await closing.boundingBox();
  if (box === null) throw new Error('No button to close with.');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await drawn(page);
  await page.mouse.up();
  await drawn(page);
  expect(await panel.count()).toBe(0);
  expectClean();
});
