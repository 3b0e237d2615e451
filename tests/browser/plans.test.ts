import { describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import { drawn, readRecords, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { headline, untilSaved } from './support/reading.ts';
import { close, openDialog } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** A plan for each vehicle that is offered, and what can be done with the plans kept, by touch on one page. */
let opened: OpenedPage;
let user: TouchUser;

openForAll(async (shared) => {
  opened = shared;
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
});

const planName = () => user.page.getByLabel('Plan name', { exact: true }).inputValue();

/** The picture in a pane, in a few bytes. */
async function pictureOf(pane: 'Whole vehicle'): Promise<string> {
  await drawn(user.page);
  return user.pane(pane).evaluate(async (element) => {
    const pixels = [...element.querySelectorAll('canvas')].map((canvas) => canvas.toDataURL()).join();
    const hash = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(pixels));
    return [...new Uint8Array(hash)].join();
  });
}

describe('a plan for each vehicle', () => {
  const VEHICLES = [
    ['Hatchback', 'hatchback'],
    ['Sedan', 'saloon'],
    ['Station wagon', 'estate'],
    ['Pickup', 'pickup'],
    ['Panel van', 'panelVan'],
    ['Small bus', 'smallBus'],
  ] as const;

  it('has the outline of the one that was tapped, whichever of the six', async () => {
    const pictures = new Set<string>();
    for (const [name, body] of VEHICLES) {
      await openDialog(user, 'New plan');
      const dialog = user.page.getByRole('dialog');
      await user.tap(dialog.getByText(name, { exact: true }));
      await user.tap(dialog.getByRole('button', { name: 'Start this plan', exact: true }));
      await dialog.waitFor({ state: 'detached' });
      expect(await planName()).toBe(name);
      const saved = await untilSaved(user.page, (text) => text.includes(`"name": "${name}"`));
      expect(JSON.parse(saved).sheets).toMatchObject([{ outline: { kind: 'vehicle', body } }]);
      pictures.add(await pictureOf('Whole vehicle'));
    }
    expect(pictures.size).toBe(VEHICLES.length);
    opened.expectClean();
  });
});

/** The picture of a kept plan: how many colours the screen shows of it, and what is drawn. */
async function thumbnailOf(name: string): Promise<{ colours: number; drawing: string }> {
  const { page } = user;
  const item = page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ has: page.getByText(name, { exact: true }) });
  const picture = item.locator('.kept-plan-picture');
  await user.reach(picture);
  const png = (await picture.screenshot()).toString('base64');
  const colours = await page.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (one) => one.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    if (context === null) throw new Error('No canvas');
    context.drawImage(bitmap, 0, 0);
    return new Set(new Uint32Array(context.getImageData(0, 0, bitmap.width, bitmap.height).data.buffer)).size;
  }, png);
  return { colours, drawing: await picture.innerHTML() };
}

describe('the plans kept', () => {
  const names = async () => {
    const plans = user.page.getByRole('dialog').getByRole('listitem').locator('b');
    return (await plans.allInnerTexts()).sort();
  };
  const act = (name: string) => user.tap(user.page.getByRole('dialog').getByRole('button', { name, exact: true }));
  const ALL = ['Hatchback', 'Panel van', 'Pickup', 'Sedan', 'Small bus', 'Station wagon'];
  const WITH_COPY = ['Hatchback', 'Panel van', 'Pickup', 'Sedan', 'Small bus', 'Station wagon', 'Station wagon, copy'];
  const RENAMED = ['Hatchback', 'Panel van', 'Pickup', 'Sedan', 'Small bus', 'Station wagon', 'Tow car'];

  it('are listed, copied, renamed, deleted and taken back', async () => {
    await openDialog(user, 'Plans');
    await expect.poll(names).toEqual(ALL);
    await act('Duplicate Station wagon');
    await expect.poll(names).toEqual(WITH_COPY);
    // a picture of each: the copy's is that of its plan, another vehicle's is another
    const [wagon, copy, pickup] = [
      await thumbnailOf('Station wagon'),
      await thumbnailOf('Station wagon, copy'),
      await thumbnailOf('Pickup'),
    ];
    expect(Math.min(wagon.colours, pickup.colours)).toBeGreaterThan(2);
    expect(copy.drawing === wagon.drawing).toBe(true);
    expect(pickup.drawing === wagon.drawing).toBe(false);
    await act('Rename Station wagon, copy');
    await user.write(user.page.getByRole('dialog').getByLabel('New name', { exact: true }), 'Tow car');
    await expect.poll(names).toEqual(RENAMED);

    await act('Delete Tow car');
    await expect.poll(names).toEqual(ALL);
    expect((await readRecords(user.page, 'feedrun', 'plans')).some(({ text }) => /"Tow car"/.test(String(text)))).toBe(
      false,
    );
    await act('Undo Tow car');
    await expect.poll(names).toEqual(RENAMED);
    opened.expectClean();
  });

  it('one of them opens, and all are still kept', async () => {
    await user.tap(user.page.getByRole('dialog').getByRole('button', { name: /^Tow car/ }));
    await user.page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(planName).toBe('Tow car');
    await openDialog(user, 'Plans');
    await expect.poll(names).toEqual(RENAMED);
    await close(user, 'Close');
    opened.expectClean();
  });
});

/** A new plan's dialog with these tiles and buttons tapped. */
async function newPlanWith(...taps: readonly string[]) {
  await openDialog(user, 'New plan');
  const dialog = user.page.getByRole('dialog');
  for (const text of taps) await user.tap(dialog.getByText(text, { exact: true }));
  return dialog;
}

/** The feed as it is proposed, and the verdict on it. */
async function verdictProposed(): Promise<string> {
  const settled = () => user.page.locator('.sketch-propose:not([data-quiet])').waitFor();
  await settled();
  await user.tap(user.button('Propose feed'));
  await untilText(user.page, /\d+ proposed\. Tap one/);
  await settled();
  return headline(user.page);
}

interface SavedPlan {
  readonly sheets: readonly { mirrored: boolean; outline: { kind: string; lengthM: number; bayM?: number } }[];
  readonly fittings: readonly { kind: string; at: { xM: number; yM: number } }[];
}

describe('a new plan', () => {
  it('has the sizes that were told, the wheel where it was chosen and the battery at the rear; its feed has no fault', async () => {
    const dialog = await newPlanWith('Panel van', 'Right-hand drive', 'At the rear', 'Add 500 W', 'Add 800 W', 'Sizes');
    const start = dialog.getByRole('button', { name: 'Start this plan', exact: true });
    await user.write(dialog.getByLabel('Length', { exact: true }), '2.2 m');
    await untilText(user.page, 'The bay and the cabin together are longer than the vehicle. Make one shorter.');
    expect(await start.isDisabled()).toBe(true);
    await user.write(dialog.getByLabel('Length', { exact: true }), '20 ft');
    await user.write(dialog.getByLabel('Nose to firewall', { exact: true }), '1100 mm');
    await user.tap(start);
    await dialog.waitFor({ state: 'detached' });
    const saved: SavedPlan = JSON.parse(await untilSaved(user.page, (text) => text.includes('"mirrored": true')));
    expect(saved.sheets).toMatchObject([{ mirrored: true, outline: { kind: 'vehicle', lengthM: 6.096, bayM: 1.1 } }]);
    const battery = saved.fittings.find(({ kind }) => kind === 'battery');
    expect(battery?.at.xM).toBeGreaterThan(6.096 / 2);
    expect(saved.fittings.filter(({ kind }) => kind === 'amplifier')).toHaveLength(2);
    expect(await verdictProposed()).toMatch(/^Provisional: \d+ lengths? to tape$/);
    opened.expectClean();
  });

  it('on a board has a feed to be proposed too', async () => {
    const dialog = await newPlanWith('Bench board', 'In the engine bay', 'Add 300 W');
    await user.tap(dialog.getByRole('button', { name: 'Start this plan', exact: true }));
    await dialog.waitFor({ state: 'detached' });
    const saved: SavedPlan = JSON.parse(await untilSaved(user.page, (text) => text.includes('"kind": "bench"')));
    expect(saved.fittings).toHaveLength(2);
    expect(await verdictProposed()).toMatch(/^Provisional: \d+ lengths? to tape$/);
    opened.expectClean();
  });
});
