/** The two panes: on every wide screen both, and in the bay's the stretch that nothing protects is as long as thumbs need. */
import { expect, it } from 'vitest';
import { VIEWPORTS, type ViewportName } from '../support/browser.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { headline, metres, untilSaved } from './support/reading.ts';
import type { At } from './support/route.ts';
import { openDialog } from './support/screens.ts';
import { type PaneName, TouchUser } from './support/touch.ts';

/** Two fingertips of an ordinary hand, css px: one holds the fuse, one stays beside it. */
const TWO_TIPS_PX = 88;

it.each<[ViewportName, number]>([
  ['tablet', 2],
  ['tabletPortrait', 2],
  ['projector', 2],
  ['phone', 1],
])(
  '%s shows %i of the panes, and the stretch from source to fuse two fingertips long in the bay',
  async (size, panes) => {
    const opened = await openForTest(size);
    const user = new TouchUser(opened);
    const { page } = user;
    await untilText(page, '1 to stop for');
    await drawn(page);
    const { width, height } = VIEWPORTS[size];
    const boxes = await page.locator('.sketch-pane').evaluateAll((all) =>
      all.map((pane) => {
        const { left, top, right, bottom } = pane.getBoundingClientRect();
        return { left, top, right, bottom };
      }),
    );
    expect(boxes).toHaveLength(panes);
    for (const { left, top, right, bottom } of boxes) {
      expect(Math.min(left, top)).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(width);
      expect(bottom).toBeLessThanOrEqual(height);
      expect(Math.min(right - left, bottom - top)).toBeGreaterThan(160);
    }
    // of a tablet held upright the upper three fifths are the sketch's, the rest is under the thumb
    if (size === 'tabletPortrait') {
      const sketchPx = (await page.locator('.sketch').boundingBox())?.height ?? Number.NaN;
      expect(sketchPx / height).toBeGreaterThan(0.55);
      expect(sketchPx / height).toBeLessThan(0.65);
    }
    // what the scale bar of the bay says, times the length beside the stripe
    const scale = user.pane('Engine bay').locator('..').locator('.sketch-scale');
    const barPx = (await scale.locator('.sketch-scale-bar').boundingBox())?.width ?? Number.NaN;
    const pxPerM = barPx / metres(await scale.innerText());
    const stretchM = metres(await page.locator('.sketch-label[data-kind="hazard"]').first().innerText());
    expect(stretchM).toBeCloseTo(0.919, 3);
    expect(stretchM * pxPerM).toBeGreaterThan(TWO_TIPS_PX);
    opened.expectClean();
  },
);

it.each<ViewportName>(['tablet', 'tabletPortrait', 'projector'])(
  '%s has every pane where it was when a tool is taken up, and what to do with it below them',
  async (size) => {
    const opened = await openForTest(size, { hasTouch: true });
    const user = new TouchUser(opened);
    const { page } = user;
    const boxes = () =>
      page.locator('.sketch-pane').evaluateAll((all) =>
        all.map((pane) => {
          const { left, top, right, bottom } = pane.getBoundingClientRect();
          return [left, top, right, bottom];
        }),
      );
    await untilText(page, 'Tap to select, drag to move.');
    await drawn(page);
    const before = await boxes();
    for (const [tile, group, says] of [
      ['Fuse', 'Fittings', 'Fuse: tap where it goes.'],
      ['Run', 'The hand', 'Tap where the run starts.'],
      ['Move', 'The hand', 'Tap to select, drag to move.'],
    ] as const) {
      await user.take(tile, group);
      await untilText(page, says);
      await drawn(page);
      expect(await boxes()).toEqual(before);
      const hint = await page.getByText(says).boundingBox();
      expect(hint?.y).toBeGreaterThanOrEqual(Math.max(...before.map(([, , , bottom]) => bottom ?? 0)));
    }
    opened.expectClean();
  },
);

/** A new plan with two amplifiers, and its feed as it is proposed. */
async function proposed(user: TouchUser, vehicle: string, battery: string, drive: string): Promise<void> {
  const { page } = user;
  await openDialog(user, 'New plan');
  const dialog = page.getByRole('dialog', { name: 'New plan' });
  for (const choice of [vehicle, battery, drive]) await user.tap(dialog.getByText(choice, { exact: true }));
  for (const output of ['Add 500 W', 'Add 800 W']) await user.tap(dialog.getByRole('button', { name: output }));
  await user.tap(dialog.getByRole('button', { name: 'Start this plan' }));
  const settled = () => page.locator('.sketch-propose:not([data-quiet])').waitFor();
  await settled();
  await user.tap(user.button('Propose feed'));
  await page.getByText(/\d+ proposed\. Tap one/).waitFor();
  await settled();
  // neither to stop for nor to fix
  expect(await headline(page)).toMatch(/^Provisional: \d+ lengths? to tape$/);
  await user.tap(user.button('Accept all'));
  await page.getByText('Tap to select, drag to move.').waitFor();
  await drawn(page);
}

interface Stretch {
  readonly battery: At;
  readonly fuse: At;
}

const lengthM = ({ battery, fuse }: Stretch): number => Math.hypot(fuse.xM - battery.xM, fuse.yM - battery.yM);

/** Where battery and fuse stand, as the browser keeps the plan, once that passes. */
async function untilKept(user: TouchUser, passes: (stretch: Stretch) => boolean): Promise<Stretch> {
  const read = (text: string): Stretch | null => {
    const { fittings } = JSON.parse(text || '{"fittings":[]}') as { fittings: { kind: string; at: At }[] };
    const at = (kind: string) => fittings.find((one) => one.kind === kind)?.at;
    const [battery, fuse] = [at('battery'), at('fuse')];
    return battery === undefined || fuse === undefined ? null : { battery, fuse };
  };
  const isGood = (text: string): boolean => {
    const stretch = read(text);
    return stretch !== null && passes(stretch);
  };
  const found = read(await untilSaved(user.page, isGood));
  if (found === null) throw new Error('There is no stretch.');
  return found;
}

it.each<[vehicle: string, battery: string, drive: string, pane: PaneName]>([
  ['Hatchback', 'In the engine bay', 'Left-hand drive', 'Engine bay'],
  ['Hatchback', 'Under a seat', 'Left-hand drive', 'Around the battery'],
  ['Panel van', 'At the rear', 'Right-hand drive', 'Around the battery'],
])('%s, battery %s, %s: the stretch that is proposed has room for two thumbs', async (vehicle, place, drive, name) => {
  const opened = await openForTest();
  const user = new TouchUser(opened);
  const { page } = user;
  await proposed(user, vehicle, place, drive);
  const before = await untilKept(user, () => true);
  const pane = user.pane(name).locator('..');
  const inPane = async () => {
    const box = await pane.boundingBox();
    if (box === null) throw new Error(`${name} is not to be seen.`);
    return box;
  };
  for (const size of ['projector', 'tabletPortrait', 'tablet'] as const) {
    await page.setViewportSize(VIEWPORTS[size]);
    await drawn(page);
    await drawn(page);
    const barPx = (await pane.locator('.sketch-scale-bar').boundingBox())?.width ?? Number.NaN;
    const pxPerM = barPx / metres(await pane.locator('.sketch-scale').innerText());
    expect([size, lengthM(before) * pxPerM >= TWO_TIPS_PX - 0.5]).toEqual([size, true]);
    for (const label of ['Battery', 'Main fuse']) {
      expect(await pane.locator('.sketch-label').getByText(label, { exact: true }).count()).toBe(1);
    }
  }

  await user.learn(name);
  const spots = [user.spot(before.battery, name), user.spot(before.fuse, name)] as const;
  const { x, y, width, height } = await inPane();
  for (const spot of spots) {
    expect(Math.min(spot.x - x, spot.y - y, x + width - spot.x, y + height - spot.y)).toBeGreaterThan(44);
  }
  const [battery, fuse] = spots;
  expect(Math.hypot(fuse.x - battery.x, fuse.y - battery.y)).toBeGreaterThan(TWO_TIPS_PX - 1);
  // to a third of the way, which is within 10 cm of the battery
  const near = { x: battery.x + (fuse.x - battery.x) / 3, y: battery.y + (fuse.y - battery.y) / 3 };
  await user.tap(user.button('Snap'));
  await opened.finger.drag(fuse, near);
  const after = await untilKept(user, (stretch) => lengthM(stretch) < 0.1);
  expect(after.battery).toEqual(before.battery);
  expect(lengthM(after)).toBeGreaterThan(0.05);
  opened.expectClean();
});
