import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OpenedPage } from '../support/browser.ts';
import type { Finger, Place } from '../support/finger.ts';
import { Pen } from '../support/pen.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { metres, row, savedText, shownValue, undoButton, undoDepth, untilSaved } from './support/reading.ts';
import type { At } from './support/route.ts';
import { openDialog } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** A run drawn free-hand, bent, led elsewhere and taped, and all that breaks off a gesture, by touch and by pen on one page. */
let opened: OpenedPage;
let user: TouchUser;

const PANE = 'Whole vehicle';
const BATTERY: At = { xM: 1.4, yM: 1.5 };
const CORNER: At = { xM: 3.4, yM: 1.5 };
const AMPLIFIER: At = { xM: 3.4, yM: 0.5 };
const GROUND: At = { xM: 2.2, yM: 0.5 };
const RUN = 'Battery to amplifier';
/** Two metres along the vehicle and one across it. */
const BENT_M = 3;
const STRAIGHT_M = Math.hypot(2, 1);

/** The plan with its fittings alone, then with the bent run: what every test begins and ends with. */
let begun: { readonly text: string; readonly depth: number };

openForAll(async (shared) => {
  opened = shared;
  user = new TouchUser(opened);
  await untilText(opened.page, '1 to stop for');
  await user.tap(user.button('New plan'));
  const dialog = user.page.getByRole('dialog', { name: 'New plan' });
  await user.tap(dialog.getByText('Panel van', { exact: true }));
  await user.tap(dialog.getByRole('button', { name: 'Start this plan' }));
  await untilText(user.page, 'Nothing drawn yet');
  await user.learn(PANE);
  await user.place({ kind: 'Battery', at: BATTERY }, PANE);
  await user.place({ kind: 'Amplifier', at: AMPLIFIER }, PANE);
  await user.place({ kind: 'Ground point', at: GROUND }, PANE);
  await begin();
});
beforeEach(async () => {
  await user.take('Move', 'The hand');
});

async function begin(): Promise<void> {
  await drawn(user.page);
  await user.page.locator('.save-sign:not(.save-saving)').waitFor({ state: 'attached' });
  begun = { text: (await savedText(user.page)) ?? '', depth: await undoDepth(user.page) };
}

const spot = (at: At): Place => user.spot(at, PANE);
const hand = () => user.page.locator('.sketch').getAttribute('data-hand');
const lengthOf = async (run: string): Promise<number> => metres((await row(user.page, 'Runs', run))[1]?.[0] ?? '');
const bendsOf = (text: string): At[] => JSON.parse(text).runs[0].bends;

async function expectNoMark(): Promise<void> {
  expect(await undoDepth(user.page)).toBe(begun.depth);
  expect(await savedText(user.page)).toBe(begun.text);
  expect(await user.page.locator('.sketch-loupe').count()).toBe(0);
}

/** One step came of it, is kept, and is taken back. */
async function expectOneStep(): Promise<void> {
  await untilSaved(user.page, (text) => text !== begun.text);
  expect(await undoDepth(user.page)).toBe(begun.depth + 1);
  await user.tap(undoButton(user.page));
  await untilSaved(user.page, (text) => text === begun.text);
  expect(await undoDepth(user.page)).toBe(begun.depth);
}

async function chooseTerminal(fitting: string, terminal: RegExp): Promise<void> {
  const tabs = user.page.getByRole('group', { name: `Terminals of ${fitting}`, exact: true });
  await user.tap(tabs.getByRole('button', { name: terminal }));
}

async function beginRun(): Promise<void> {
  await user.take('Run', 'The hand');
  await opened.finger.tap(spot(BATTERY));
  await chooseTerminal('Battery', /positive/);
}

/** A hand that trembles by a few pixels, differently at each place, round the corner. */
function tremblingLine(): Place[] {
  const trembling = [0, 2, -3, 1, 3, -2, 0, -1, 3, -3, 2, 1, -2];
  const leg = (from: Place, to: Place) =>
    trembling.map((offPx, index) => {
      const part = index / trembling.length;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const length = Math.hypot(dx, dy);
      return { x: from.x + dx * part - (dy / length) * offPx, y: from.y + dy * part + (dx / length) * offPx };
    });
  return [...leg(spot(BATTERY), spot(CORNER)), ...leg(spot(CORNER), spot(AMPLIFIER)), spot(AMPLIFIER)];
}

async function expectFreeHandRun(): Promise<void> {
  const text = await untilSaved(user.page, (saved) => saved !== begun.text);
  const bends = bendsOf(text);
  expect(bends.length).toBeGreaterThanOrEqual(1);
  expect(bends.length).toBeLessThanOrEqual(6);
  // a trembling of 3 px is far less than one part in twenty of this way
  expect(Math.abs((await lengthOf(RUN)) - BENT_M)).toBeLessThan(BENT_M / 20);
  await expectOneStep();
}

/** What breaks off the gesture of a finger that is down. */
const BREAKS: readonly [what: string, happens: (finger: Finger) => Promise<void>][] = [
  [
    'a second finger',
    async (finger) => {
      // apart by the same on their way: neither zooms nor pans
      await finger.down(spot({ xM: 2.6, yM: 1.1 }), 2);
      await finger.up(2);
      await finger.up(1);
    },
  ],
  [
    'the side of a hand',
    async (finger) => {
      await finger.layHand();
      await finger.move(spot({ xM: 2.4, yM: 1 }), 3);
      await finger.up();
    },
  ],
  ['the system', (finger) => finger.cancel()],
];

describe('a run drawn free-hand', () => {
  it('has few bends and the length of the stroke, by finger and by pen', async () => {
    const pen = await Pen.on(user.page);
    await beginRun();
    await opened.finger.stroke(tremblingLine());
    await expectFreeHandRun();

    await user.take('Run', 'The hand');
    await pen.down(spot(BATTERY));
    await pen.up();
    await chooseTerminal('Battery', /positive/);
    await pen.stroke(tremblingLine());
    await expectFreeHandRun();
    opened.expectClean();
  });

  it.each(BREAKS)(
    'keeps nothing of a stroke that %s broke off, and is ended by the next tap',
    async (_what, happens) => {
      await beginRun();
      await opened.finger.slide(spot(BATTERY), spot(CORNER), 6);
      expect(await hand()).toBe('run.drawing');
      await happens(opened.finger);
      await expectNoMark();
      await opened.finger.tap(spot(AMPLIFIER));
      // nothing but the straight way is left
      await expect.poll(() => lengthOf(RUN)).toBeCloseTo(STRAIGHT_M, 2);
      await expectOneStep();
      opened.expectClean();
    },
  );
});

describe('a fitting that is placed', () => {
  it('comes to lie where the finger lifts, under the cross of the loupe', async () => {
    const { finger } = opened;
    const [cameDown, lifted] = [spot({ xM: 2.1, yM: 0.9 }), spot({ xM: 2.937, yM: 1.113 })];
    await user.tap(user.button('Snap'));
    await user.take('Ground', 'Fittings');
    await finger.down(cameDown);
    expect(await hand()).toBe('place.aiming');
    await user.page.locator('.sketch-loupe').waitFor();
    await finger.move(lifted);
    await expectNoMarkYet();
    await finger.up();
    const seen = await user.placeInFields();
    // the fields say whole centimetres
    expect(Math.abs(seen.xM - 2.937)).toBeLessThan(0.011);
    expect(Math.abs(seen.yM - 1.113)).toBeLessThan(0.011);
    await expectOneStep();
    await user.tap(user.button('Snap'));
    opened.expectClean();
  });

  it.each(BREAKS)('is not, once %s broke it off, and the next tap places one', async (_what, happens) => {
    await user.take('Ground', 'Fittings');
    await opened.finger.slide(spot({ xM: 2.1, yM: 0.9 }), spot({ xM: 2.6, yM: 0.9 }), 4);
    await user.page.locator('.sketch-loupe').waitFor();
    await happens(opened.finger);
    await expectNoMark();
    expect(await hand()).toBe('place.idle');
    await opened.finger.tap(spot({ xM: 2.6, yM: 1 }));
    expect(await user.placeInFields()).toEqual({ xM: 2.6, yM: 1 });
    await expectOneStep();
    opened.expectClean();
  });

  it('is placed by a tap once big fingers are chosen', async () => {
    const at = { xM: 2.6, yM: 1 };
    const fingers = () => user.page.locator('[data-fingers]').getAttribute('data-fingers');
    // a screen that is touched begins with them
    expect(await fingers()).toBe('big');
    await tapBigFingers();
    await expect.poll(fingers).toBe('fine');
    await tapBigFingers();
    await expect.poll(fingers).toBe('big');
    await expectNoMark();
    await user.place({ kind: 'Ground point', at }, PANE);
    expect(await user.placeInFields()).toEqual(at);
    await expectOneStep();
    opened.expectClean();
  });
});

/** While a finger is still down nothing is kept, whatever is shown. */
async function expectNoMarkYet(): Promise<void> {
  expect(await undoDepth(user.page)).toBe(begun.depth);
  expect(await savedText(user.page)).toBe(begun.text);
}

async function tapBigFingers(): Promise<void> {
  const dialog = user.page.getByRole('dialog');
  await openDialog(user, 'Work view', 'View');
  await user.tap(dialog.getByText('Big fingers', { exact: true }));
  await user.tap(dialog.getByRole('button', { name: 'Close', exact: true }));
  await dialog.waitFor({ state: 'detached' });
}

describe('a bent run', () => {
  /** The handle of the end, beside the plate of the amplifier. */
  const handle = (): Place => ({ x: spot(AMPLIFIER).x, y: spot(AMPLIFIER).y + 36 });

  beforeAll(async () => {
    await user.take('Run', 'The hand');
    await user.join(
      {
        from: { fitting: 'Battery', terminal: 'positive' },
        to: { fitting: 'Amplifier', terminal: 'supply' },
        bends: [CORNER],
      },
      [BATTERY, AMPLIFIER],
      [PANE, PANE],
    );
    await begin();
  });

  const AWAY: At = { xM: 2.8, yM: 1.3 };
  const SHORTER_M = Math.hypot(1.4, 0.2) + Math.hypot(0.6, 0.8);
  const unprotectedM = async () => metres(await shownValue(user.page, 'Longest unprotected'));

  it('has the bend and the length that were tapped', async () => {
    expect(bendsOf(begun.text)).toEqual([CORNER]);
    await expect.poll(() => lengthOf(RUN)).toBe(BENT_M);
  });

  async function dragBend(drag: { slide(from: Place, to: Place): Promise<void> }): Promise<void> {
    await drag.slide(spot(CORNER), spot(AWAY));
    expect(await hand()).toBe('move.draggingBend');
    // nothing protects the way, which has become shorter; the table waits for the finger to lift
    await expect.poll(unprotectedM).toBeCloseTo(SHORTER_M, 1);
    await expectNoMarkYet();
  }

  it.each(BREAKS)(
    'has its bend where it was once %s broke off the drag, and the next drag moves it',
    async (_what, happens) => {
      const { finger } = opened;
      await dragBend(finger);
      await happens(finger);
      await expectNoMark();
      await expect.poll(() => lengthOf(RUN)).toBe(BENT_M);
      await finger.drag(spot(CORNER), spot(AWAY));
      expect(bendsOf(await untilSaved(user.page, (text) => text !== begun.text))).toEqual([AWAY]);
      await expectOneStep();
      opened.expectClean();
    },
  );

  it.each(BREAKS)(
    'has its end where it was once %s broke off the drag, and the next drag takes it',
    async (_what, happens) => {
      const { finger } = opened;
      const runs = user.page.getByRole('table', { name: 'Runs' });
      await user.tap(runs.getByRole('button', { name: RUN, exact: true }));
      await finger.slide(handle(), spot(GROUND), 6);
      expect(await hand()).toBe('move.draggingEnd');
      await happens(finger);
      await expectNoMark();
      expect(await lengthOf(RUN)).toBe(BENT_M);
      await finger.drag(handle(), spot(GROUND));
      await untilText(user.page, 'Battery to ground point');
      await expectOneStep();
      opened.expectClean();
    },
  );

  it('shows its fields to a finger held still on it, and those of its bend on that', async () => {
    const selected = user.page.getByRole('region', { name: 'Selected' });
    await opened.finger.longPress(spot({ xM: 2.2, yM: 1.5 }));
    await selected.getByLabel('Taped length', { exact: true }).waitFor();
    await expectNoMark();
    await opened.finger.longPress(spot(CORNER));
    await selected.getByRole('button', { name: 'Remove this bend', exact: true }).waitFor();
    await expectNoMark();
    opened.expectClean();
  });

  it('is bent by a pen, whatever the hand beside it does; nothing is left of a pen that is taken away', async () => {
    const pen = await Pen.on(user.page);
    await dragBend(pen);
    // the hand comes to rest beside it, wide and with a knuckle
    await opened.finger.palm(spot({ xM: 3.9, yM: 1.4 }));
    await opened.finger.down(spot({ xM: 3.9, yM: 0.9 }), 2);
    await opened.finger.up(2);
    await opened.finger.up(1);
    expect(await hand()).toBe('move.draggingBend');
    await expectNoMarkYet();
    await pen.up();
    expect(bendsOf(await untilSaved(user.page, (text) => text !== begun.text))).toEqual([AWAY]);
    await expectOneStep();

    // no input path of the browser's tools takes a pen away: told to the sketch as the system tells it
    await user.pane(PANE).evaluate((pane: HTMLElement) => {
      const note = ({ pointerId }: PointerEvent) => {
        document.body.dataset.pen = String(pointerId);
      };
      pane.addEventListener('pointerdown', note, { once: true });
    });
    await dragBend(pen);
    await user.pane(PANE).evaluate((pane) => {
      const pointerId = Number(document.body.dataset.pen);
      pane.dispatchEvent(new PointerEvent('pointercancel', { pointerId, pointerType: 'pen', bubbles: true }));
    });
    await pen.move(spot({ xM: 2.4, yM: 1.1 }), 3);
    await pen.up();
    await expectNoMark();
    await expect.poll(() => lengthOf(RUN)).toBe(BENT_M);
    opened.expectClean();
  });

  it('is taped in feet, inches and parts of an inch by the keys of the page', async () => {
    const { page } = user;
    const settings = page.getByRole('dialog');
    await openDialog(user, 'Settings');
    await user.choose(settings.getByLabel('Lengths in', { exact: true }), 'Feet and inches');
    await user.tap(settings.getByRole('button', { name: 'Close', exact: true }));
    await settings.waitFor({ state: 'detached' });
    const before = begun;
    await begin();
    const runs = page.getByRole('table', { name: 'Runs' });
    await user.tap(runs.getByRole('button', { name: RUN, exact: true }));

    const field = user.field('Taped length');
    const keys = page.getByRole('group', { name: 'Keypad for Taped length' });
    const press = async (...signs: string[]) => {
      for (const name of signs) await user.tap(keys.getByRole('button', { name, exact: true }));
    };
    const tapedM = async () => JSON.parse(await untilSaved(page, (text) => text !== begun.text)).runs[0].tapedM;
    const open = async () => {
      // where fingers are big a tap on the field brings its keys
      await user.tap(field);
      await keys.waitFor();
    };
    await open();
    await press('5', 'ft', '3', '1/2', 'in');
    expect((await field.inputValue()).trim()).toBe('5 ft 3 1/2 in');
    await expectNoMarkYet();
    await press('Done');
    // an inch is 25.4 mm: 5 ft 3 1/2 in are 63.5 of them
    expect(await tapedM()).toBeCloseTo(1.6129, 9);
    expect(await field.inputValue()).toBe('5 ft 3 1/2 in');
    await expectOneStep();

    await open();
    await press('5', 'ft', '3', '1/16', 'Done');
    // to the tenth of a millimetre to which a plan keeps lengths
    expect(Math.abs((await tapedM()) - 63.0625 * 0.0254)).toBeLessThan(0.0001);
    await expectOneStep();
    await user.tap(undoButton(page));
    await untilSaved(page, (text) => text === before.text);
    begun = before;
    opened.expectClean();
  });
});
