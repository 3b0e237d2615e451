import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import type { Place } from '../support/finger.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { metres, shownValue, undoButton } from './support/reading.ts';
import { selectInList } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** A cable over two sheets, and an outline of one's own, by touch on one page. */
let opened: OpenedPage;
let user: TouchUser;

openForAll(async (shared) => {
  opened = shared;
  opened.page.setDefaultTimeout(20_000);
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
});

/** A place of a sheet. */
interface Metres {
  readonly xM: number;
  readonly yM: number;
}

const sheets = () => user.page.getByRole('navigation', { name: 'Sheets' });
const drawing = (title: string) => user.page.getByRole('img', { name: new RegExp(`^${title}: drawing`) });

/** A place of a pane, as a part of its width and height. */
async function spot(title: string, x: number, y: number): Promise<Place> {
  await drawing(title).waitFor();
  await drawn(user.page);
  const box = await drawing(title).boundingBox();
  if (box === null) throw new Error(`${title} is not to be seen`);
  return { x: box.x + box.width * x, y: box.y + box.height * y };
}
const tapAt = async (title: string, x: number, y: number) => opened.finger.tap(await spot(title, x, y));

async function chooseTerminal(fitting: string, terminal: RegExp): Promise<void> {
  const tabs = user.page.getByRole('group', { name: `Terminals of ${fitting}`, exact: true });
  await user.tap(tabs.getByRole('button', { name: terminal }));
}

/** The outline being drawn, and where its places are on the screen; a vehicle of 4.4 m by 1.8 m. */
async function outlineDrawn(): Promise<{ picture: Locator; at: (xM: number, yM: number) => Place }> {
  const picture = user.page.getByRole('img', { name: /^The outline from above/ });
  const box = await picture.boundingBox();
  if (box === null) throw new Error('The outline is not to be seen');
  const scale = Math.min(box.width / (4.4 + 0.5), box.height / (1.8 + 0.5));
  const at = (xM: number, yM: number) => ({
    x: box.x + box.width / 2 + (xM - 2.2) * scale,
    y: box.y + box.height / 2 + (yM - 0.9) * scale,
  });
  return { picture, at };
}

/** Opens what stands behind the shelf. */
async function more(button: string): Promise<void> {
  await user.tap(user.page.getByRole('button', { name: /^More/ }));
  await user.tap(
    user.page.getByRole('region', { name: /fittings/i }).getByRole('button', { name: button, exact: true }),
  );
  await drawn(user.page);
}

describe('several sheets of one vehicle', () => {
  it('a cable is led from one to another, and is one cable; a sheet goes with what is on it, and comes back', async () => {
    await user.tap(user.button('New plan'));
    await user.tap(user.page.getByRole('dialog').getByRole('button', { name: 'Start this plan', exact: true }));
    await more('Cargo from the side');
    await user.take('Amplifier', 'Fittings');
    await tapAt('Cargo from the side', 0.6, 0.5);
    await user.tap(sheets().getByRole('button', { name: 'Whole from above', exact: true }));
    await user.take('Battery', 'Fittings');
    await tapAt('Whole vehicle', 0.2, 0.6);
    await user.take('Run', 'The hand');
    await tapAt('Whole vehicle', 0.2, 0.6);
    await chooseTerminal('Battery', /positive/);
    await tapAt('Whole vehicle', 0.62, 0.6);
    await user.tap(user.button('Continue on another sheet'));
    await tapAt('Cargo from the side', 0.6, 0.5);
    await drawn(user.page);
    expect(await layoutFaults(user.page)).toEqual([]);
    await untilText(user.page, 'continues at Whole from above');

    // nothing protects the way from the battery to the amplifier: the length said is that of both parts
    const read = async () => {
      await expect.poll(() => shownValue(user.page, 'Longest unprotected'), { timeout: 5_000 }).not.toBe('–');
      return metres(await shownValue(user.page, 'Longest unprotected'));
    };
    const bothM = await read();
    await user.tap(undoButton(user.page));
    const firstM = await read();
    await user.tap(user.page.getByRole('button', { name: /^Redo:/ }));
    expect(await read()).toBe(bothM);
    // the second part goes from the point to the amplifier: nearly half of the side's width
    expect(bothM - firstM).toBeGreaterThan(0.3);
    expect(firstM).toBeGreaterThan(1);

    await user.tap(sheets().getByRole('button', { name: 'Change Cargo from the side' }));
    await user.tap(user.button('Delete the sheet'));
    await sheets().waitFor({ state: 'detached' });
    expect(await user.page.getByText('continues at', { exact: false }).count()).toBe(0);
    await user.tap(undoButton(user.page));
    await sheets().waitFor();
    // the sheet that came back is open again
    await untilText(user.page, 'continues at Whole from above');
    opened.expectClean();
  });

  it('a continuation point dragged on a part of the vehicle moves there, and stays where it is on the whole', async () => {
    const { page } = user;
    const side = 'Cargo from the side';
    const selected = page.getByRole('region', { name: 'Selected' });
    const placeIn = async (fields: Locator, across: string) => ({
      xM: metres(await fields.getByLabel('From the nose', { exact: true }).inputValue()),
      yM: metres(await fields.getByLabel(across, { exact: true }).inputValue()),
    });
    // the amplifier was tapped in place there; from it and the scale bar follows where the point is
    await user.take('Move', 'The hand');
    await tapAt(side, 0.6, 0.5);
    const amplifier = { px: await spot(side, 0.6, 0.5), at: await placeIn(selected, 'From the roof') };
    const bar = drawing(side).locator('..').locator('.sketch-scale');
    const barPx = (await bar.locator('.sketch-scale-bar').boundingBox())?.width ?? Number.NaN;
    const pxPerM = barPx / metres(await bar.innerText());

    await selectInList(user, 'Continuation point');
    const there = () => placeIn(selected.getByRole('group', { name: `On ${side}` }), 'From the roof');
    const onWhole = () => placeIn(selected.getByRole('group', { name: 'On Whole from above' }), 'From the right side');
    const [before, wholeBefore] = [await there(), await onWhole()];
    const point = {
      x: amplifier.px.x + (before.xM - amplifier.at.xM) * pxPerM,
      y: amplifier.px.y + (before.yM - amplifier.at.yM) * pxPerM,
    };
    const byM = 0.4;
    await opened.finger.drag(point, { x: point.x + byM * pxPerM, y: point.y });
    // to the next line of the grid
    expect((await there()).xM - before.xM).toBeCloseTo(byM, 1);
    expect((await there()).yM).toBeCloseTo(before.yM, 1);
    expect(await onWhole()).toEqual(wholeBefore);
    await user.tap(undoButton(page));
    expect(await there()).toEqual(before);

    // straight on each sheet: from the battery to the point on one, from the point to the amplifier on the other
    await selectInList(user, 'Battery');
    const battery = await placeIn(selected, 'From the right side');
    const lengthM = (from: Metres, to: Metres) => Math.hypot(to.xM - from.xM, to.yM - from.yM);
    const [wholeM, sideM] = [lengthM(battery, wholeBefore), lengthM(before, amplifier.at)];
    expect(Math.min(wholeM, sideM)).toBeGreaterThan(0.3);
    // places are read in whole centimetres
    expect(Math.abs(metres(await shownValue(page, 'Longest unprotected')) - (wholeM + sideM))).toBeLessThan(0.03);
    await user.tap(selected.getByRole('button', { name: 'Close', exact: true }));
    opened.expectClean();
  });

  it('two fingers, the side of a hand and what the system takes away leave no mark on an outline', async () => {
    const { finger } = opened;
    await more('Draw its outline');
    const { picture, at } = await outlineDrawn();
    const edge = () => picture.locator('.outline-edge').getAttribute('d');
    const asItWas = await edge();
    const noMark = async () => {
      expect(await edge()).toBe(asItWas);
      expect(await user.button('Undo in the outline').isDisabled()).toBe(true);
    };
    const hold = async () => {
      await finger.slide(at(4.4, 0), at(4, 0.3), 3);
      expect(await edge()).not.toBe(asItWas);
    };

    await hold();
    await finger.down(at(2, 0.9), 2);
    expect(await edge()).toBe(asItWas);
    await finger.move(at(2.2, 1.2), 3, 2);
    await finger.up(2);
    await finger.move(at(3.8, 0.4), 2);
    await finger.up();
    await noMark();

    // the first holds nothing: the second is still the second
    await finger.down(at(2, 0.9));
    await finger.down(at(4.4, 0), 2);
    await finger.move(at(4, 0.3), 3, 2);
    await finger.up(2);
    await finger.up();
    await noMark();

    await hold();
    await finger.layHand();
    expect(await edge()).toBe(asItWas);
    await finger.up();
    await noMark();

    await hold();
    await finger.cancel();
    await noMark();

    // and one finger is heard again
    await hold();
    await finger.up();
    expect(await user.button('Undo in the outline').isDisabled()).toBe(false);
    await user.tap(user.button('Cancel'));
    await picture.waitFor({ state: 'detached' });
    opened.expectClean();
  });

  it('an outline is drawn, kept, and a plan begun with it', async () => {
    await more('Draw its outline');
    const { picture, at } = await outlineDrawn();
    await user.page.getByRole('group', { name: 'Corner 1 of 4' }).waitFor();
    // on the bare edge at the top, a little behind the middle: a corner, then pulled in
    await opened.finger.slide(at(3.2, 0), at(3.2, 0.3), 4);
    await opened.finger.up();
    await user.page.getByRole('group', { name: 'Corner 2 of 5' }).waitFor();
    expect(await layoutFaults(user.page)).toEqual([]);
    await user.write(user.page.getByLabel('Name of the template', { exact: true }), 'Notched van');
    await user.tap(user.button('Keep as template'));
    await untilText(user.page, 'Notched van is kept as a template.');
    await user.tap(user.button('Use on all 2 sheets of this vehicle'));
    await picture.waitFor({ state: 'detached' });
    await untilText(user.page, 'The outline was changed on every sheet of this vehicle.');
    expect(await layoutFaults(user.page)).toEqual([]);

    await user.tap(user.button('New plan'));
    await user.tap(user.page.getByRole('dialog').getByRole('button', { name: 'Notched van', exact: true }));
    await drawing('Own outline').waitFor();
    expect(await user.page.getByLabel('Plan name', { exact: true }).inputValue()).toBe('Notched van');
    await more('Draw its outline');
    await user.page.getByRole('group', { name: 'Corner 1 of 5' }).waitFor();
    opened.expectClean();
  });
});
