/**
 * The hands of someone with a tablet: everything is done by touches on what is visible. Where a thing stands on the
 * screen is found out as a user would: by the scale bar, and by what the page says of a thing placed there.
 */
import type { Locator, Page } from 'playwright-core';
import type { OpenedPage } from '../../support/browser.ts';
import { centreOf, type Place } from '../../support/finger.ts';
import { drawn } from '../../support/reading.ts';
import { metres, undoButton } from './reading.ts';
import type { At, End, Joined, Kind, Placed } from './route.ts';

export type PaneName = 'Engine bay' | 'Around the battery' | 'Whole vehicle';

/** How a pane maps the sheet onto the screen. */
interface Mapping {
  readonly pxPerM: number;
  readonly origin: Place;
}

export type Mappings = ReadonlyMap<PaneName, Mapping>;

/** The shelf has room for short names only. */
const ON_SHELF: Readonly<Record<Kind, string>> = {
  Battery: 'Battery',
  Fuse: 'Fuse',
  'Pass-through': 'Pass-through',
  'Distribution block': 'Block',
  Amplifier: 'Amplifier',
  'Ground point': 'Ground',
};

/** Longest way of a finger that scrolls a panel, px; it may leave the panel on its way, not the screen. */
const STROKE_PX = 600;
const MOST_STROKES = 30;
/** A finger that moves no further than this has tapped, px. */
const TAP_SLOP_PX = 16;
/** How far inside a panel's edge the finger comes down, px. */
const EDGE_PX = 12;

export class TouchUser {
  readonly page: Page;
  readonly mappings: Map<PaneName, Mapping>;

  /** `known`: where things were on a page opened before on the same screen. */
  constructor(
    readonly opened: OpenedPage,
    known: Mappings = new Map(),
  ) {
    this.page = opened.page;
    this.mappings = new Map(known);
  }

  pane(name: PaneName): Locator {
    return this.page.getByRole('img', { name: new RegExp(`^${name}: drawing`) });
  }

  field(label: string | RegExp): Locator {
    return this.page.getByRole('region', { name: 'Selected' }).getByLabel(label, { exact: true });
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name, exact: true });
  }

  async tap(locator: Locator): Promise<void> {
    await this.opened.finger.tap(await this.reach(locator));
  }

  /** Taps a field, types into it in place of what is there, and goes on with Enter. */
  async write(field: Locator, text: string): Promise<void> {
    await this.tap(field);
    await this.page.keyboard.press('Control+A');
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
    await drawn(this.page);
  }

  /** Taps a list to choose from and moves down to a choice: the system's own menu takes no touches from a test. */
  async choose(list: Locator, choice: string): Promise<void> {
    await this.tap(list);
    const steps = await list.evaluate(
      (element, wanted) =>
        element instanceof HTMLSelectElement
          ? [...element.options].findIndex(({ text }) => text === wanted) - element.selectedIndex
          : 0,
      choice,
    );
    const key = steps < 0 ? 'ArrowUp' : 'ArrowDown';
    for (let step = 0; step < Math.abs(steps); step += 1) await this.page.keyboard.press(key);
    await this.page.keyboard.press('Enter');
    await drawn(this.page);
  }

  /** One of the tiles on the shelf: a way of the hand, or a kind of fitting. */
  async take(tile: string, group: 'The hand' | 'Fittings'): Promise<void> {
    await this.tap(this.page.getByRole('radiogroup', { name: group }).getByText(tile, { exact: true }));
  }

  /** Scrolls by finger until a thing is in sight, and answers the middle of it. */
  async reach(locator: Locator): Promise<Place> {
    for (let stroke = 0; stroke < MOST_STROKES; stroke += 1) {
      const offPx = await outOfSight(locator);
      if (offPx === null) {
        const box = await locator.boundingBox();
        if (box !== null) return centreOf(box);
        // what is drawn anew at this very moment is there again with the next frame
        await drawn(this.page);
        continue;
      }
      // the first of a stroke may still be a tap, and scrolls nothing
      const wishedPx = -offPx.px - Math.sign(offPx.px) * TAP_SLOP_PX;
      const byPx = Math.max(-STROKE_PX, Math.min(STROKE_PX, wishedPx));
      const { x, top, bottom } = offPx.view;
      const from = { x, y: byPx < 0 ? bottom - EDGE_PX : top + EDGE_PX };
      const screenPx = this.page.viewportSize()?.height ?? bottom;
      const to = { x, y: Math.max(EDGE_PX, Math.min(screenPx - EDGE_PX, from.y + byPx)) };
      const { finger } = this.opened;
      await finger.down(from);
      await finger.move(to, 4);
      // resting before it lifts, so that the panel does not fly on
      await finger.move(to, 4);
      await finger.up();
      await still(locator);
    }
    throw new Error(`No scrolling brings ${String(locator)} into sight.`);
  }

  /**
   * Finds the scale and the corner of a pane: with snapping off, two things placed far apart, each read off in its
   * fields, then taken back.
   */
  async learn(name: PaneName): Promise<void> {
    const box = await this.pane(name).boundingBox();
    if (box === null) throw new Error(`${name} is not to be seen.`);
    await this.tap(this.button('Snap'));
    const marks: { place: Place; at: At }[] = [];
    for (const share of [0.25, 0.75]) {
      const place = { x: Math.round(box.x + box.width * share), y: Math.round(box.y + box.height * share) };
      await this.take('Ground', 'Fittings');
      await this.opened.finger.tap(place);
      marks.push({ place, at: await this.placeInFields() });
      await this.tap(undoButton(this.page));
    }
    await this.tap(this.button('Snap'));
    const [one, other] = marks;
    if (one === undefined || other === undefined) throw new Error('Nothing was placed.');
    const pxPerM = (other.place.x - one.place.x) / (other.at.xM - one.at.xM);
    const origin = { x: one.place.x - one.at.xM * pxPerM, y: one.place.y - one.at.yM * pxPerM };
    this.mappings.set(name, { pxPerM, origin });
  }

  /** Where the selected thing stands, as its fields say. */
  async placeInFields(): Promise<At> {
    const read = async (label: string) => metres(await this.field(label).inputValue());
    return { xM: await read('From the nose'), yM: await read('From the right side') };
  }

  scaleOf(name: PaneName): number {
    return this.mapping(name).pxPerM;
  }

  private mapping(name: PaneName): Mapping {
    const found = this.mappings.get(name);
    if (found === undefined) throw new Error(`Where things are in ${name} has not been learned.`);
    return found;
  }

  /** Where a place of the sheet is on the screen. */
  spot({ xM, yM }: At, name: PaneName): Place {
    const { pxPerM, origin } = this.mapping(name);
    return { x: origin.x + xM * pxPerM, y: origin.y + yM * pxPerM };
  }

  async place({ kind, at }: Pick<Placed, 'kind' | 'at'>, pane: PaneName): Promise<void> {
    await this.take(ON_SHELF[kind], 'Fittings');
    await this.opened.finger.tap(this.spot(at, pane));
  }

  /** Taps a fitting; where it then asks which terminal, taps that one. */
  private async tapTerminal({ fitting, terminal }: End, at: At, pane: PaneName): Promise<void> {
    await this.opened.finger.tap(this.spot(at, pane));
    const tabs = this.page.getByRole('group', { name: `Terminals of ${fitting}`, exact: true });
    if (await tabs.isVisible()) await this.tap(tabs.getByRole('button', { name: new RegExp(`(^|[+−] )${terminal}`) }));
  }

  /** Draws a run: with the hand for it taken up, terminal, bends, terminal. */
  async join(
    { from, to, bends }: Joined,
    ends: readonly [At, At],
    panes: readonly [PaneName, PaneName],
  ): Promise<void> {
    await this.tapTerminal(from, ends[0], panes[0]);
    for (const bend of bends) await this.opened.finger.tap(this.spot(bend, panes[1]));
    await this.tapTerminal(to, ends[1], panes[1]);
  }
}

/**
 * How far a thing is above (below zero) or below the middle of the panel it is in, px; null when it is in sight: all of
 * it, or its middle when it is too high for the panel.
 */
async function outOfSight(
  locator: Locator,
): Promise<{ px: number; view: { x: number; top: number; bottom: number } } | null> {
  return locator.evaluate((element) => {
    const box = element.getBoundingClientRect();
    let around = element.parentElement;
    while (around !== null && !/auto|scroll/.test(getComputedStyle(around).overflowY)) around = around.parentElement;
    if (around === null) return null;
    const view = around.getBoundingClientRect();
    // a head that stays at the top of its panel covers what scrolls under it
    const head = around.querySelector('header');
    const isSticky = head !== null && !head.contains(element) && getComputedStyle(head).position === 'sticky';
    const top = Math.max(view.top, isSticky ? head.getBoundingClientRect().bottom : view.top);
    const bottom = Math.min(view.bottom, window.innerHeight);
    const middle = (box.top + box.bottom) / 2;
    const isInSight =
      box.height > bottom - top ? middle > top && middle < bottom : box.top >= top && box.bottom <= bottom;
    if (isInSight) return null;
    return { px: middle - (top + bottom) / 2, view: { x: (view.left + view.right) / 2, top, bottom } };
  });
}

/** Waits until a thing has stopped moving. */
async function still(locator: Locator): Promise<void> {
  let [before, same] = [await locator.boundingBox(), 0];
  while (same < 2) {
    await drawn(locator.page());
    const now = await locator.boundingBox();
    same = now?.y === before?.y ? same + 1 : 0;
    before = now;
  }
}
