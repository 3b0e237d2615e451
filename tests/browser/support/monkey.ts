/**
 * A hand that means nothing by what it does: touches at random from a seed, of up to three fingers, with drags that the
 * system takes away, the side of a hand, turned screens and changes of the tool.
 */
import type { CDPSession } from 'playwright-core';
import type { OpenedPage } from '../../support/browser.ts';
import type { Place } from '../../support/finger.ts';

/** Numbers in [0, 1) that a seed decides (mulberry32, a published generator in the public domain). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

interface Touch extends Place {
  readonly id: number;
  readonly radiusX?: number;
  readonly radiusY?: number;
}

const TURNED = [
  { width: 1180, height: 820 },
  { width: 820, height: 1180 },
] as const;

const BROKEN_OFF = ['cancel', 'palm', 'turn'] as const;

export class Monkey {
  private isPortrait = false;

  private constructor(
    private readonly opened: OpenedPage,
    private readonly session: CDPSession,
    private readonly random: () => number,
  ) {}

  static async on(opened: OpenedPage, seed: number): Promise<Monkey> {
    return new Monkey(opened, await opened.context.newCDPSession(opened.page), randomFrom(seed));
  }

  private between = (low: number, high: number): number => low + this.random() * (high - low);
  private pick = <T>(all: readonly [T, ...T[]]): T => all[Math.floor(this.random() * all.length)] ?? all[0];

  private async send(type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', touchPoints: readonly Touch[]) {
    await this.session.send('Input.dispatchTouchEvent', { type, touchPoints: [...touchPoints] });
  }

  /** Mostly on the sketch, sometimes on the tools; never on the row at the top, where other plans are. */
  private async anywhere(): Promise<Place> {
    const name = this.random() < 0.8 ? '.sketch-place' : '.shelf';
    const box = await this.opened.page.locator(name).first().boundingBox();
    const { x, y, width, height } = box ?? { x: 100, y: 200, width: 200, height: 200 };
    return { x: x + this.between(0.02, 0.98) * width, y: y + this.between(0.02, 0.98) * height };
  }

  private async onAFitting(): Promise<Place> {
    // all at one moment: a label may be gone with the next
    const boxes = await this.opened.page.locator('.sketch-label').evaluateAll((labels) =>
      labels.map((label) => {
        const { left, top, right, bottom } = label.getBoundingClientRect();
        return { left, top, right, bottom };
      }),
    );
    const box = boxes[Math.floor(this.random() * boxes.length)];
    if (box === undefined) return this.anywhere();
    // a label stands beside its fitting, on any side of it
    const off = this.between(8, 40);
    const [x, y] = [(box.left + box.right) / 2 + this.between(-12, 12), (box.top + box.bottom) / 2];
    return this.pick([
      { x, y: box.top - off },
      { x, y: box.bottom + off },
      { x: box.left - off, y },
      { x: box.right + off, y },
    ]);
  }

  private async drag(touches: readonly Touch[], ending: 'lift' | 'cancel' | 'palm' | 'turn'): Promise<void> {
    let now = touches;
    for (let count = 1; count <= touches.length; count += 1) await this.send('touchStart', touches.slice(0, count));
    const steps = Math.floor(this.between(1, 6));
    for (let step = 0; step < steps; step += 1) {
      now = now.map((touch) => ({ ...touch, x: touch.x + this.between(-90, 90), y: touch.y + this.between(-70, 70) }));
      await this.send('touchMove', now);
    }
    if (ending === 'turn') await this.turn();
    if (ending === 'palm')
      await this.send(
        'touchMove',
        now.map((touch) => ({ ...touch, radiusX: 70, radiusY: 70 })),
      );
    if (ending === 'cancel') await this.send('touchCancel', []);
    else for (let left = now.length - 1; left >= 0; left -= 1) await this.send('touchEnd', now.slice(0, left));
  }

  private async turn(): Promise<void> {
    this.isPortrait = !this.isPortrait;
    await this.opened.page.setViewportSize(TURNED[this.isPortrait ? 1 : 0]);
  }

  private async takeBack(): Promise<void> {
    await this.opened.page.keyboard.press(this.random() < 0.7 ? 'Control+z' : 'Control+Shift+z');
  }

  /** One gesture; answers what it was, so that a failing run can be read. */
  async gesture(): Promise<string> {
    const dice = this.random();
    if (dice < 0.03) {
      await this.turn();
      return 'turn';
    }
    if (dice < 0.1) {
      await this.takeBack();
      return 'undo or redo';
    }
    const at = await (this.random() < 0.5 ? this.onAFitting() : this.anywhere());
    if (dice < 0.45) {
      await this.send('touchStart', [{ id: 1, ...at }]);
      await this.send('touchEnd', []);
      return `tap ${at.x.toFixed()},${at.y.toFixed()}`;
    }
    const fingers = dice < 0.85 ? 1 : dice < 0.97 ? 2 : 3;
    const touches = Array.from({ length: fingers }, (_, index) => ({
      id: index + 1,
      x: at.x + index * this.between(40, 160),
      y: at.y + index * this.between(-40, 40),
    }));
    const ending = this.random() < 0.75 ? 'lift' : this.pick(BROKEN_OFF);
    await this.drag(touches, ending);
    return `${fingers} fingers from ${at.x.toFixed()},${at.y.toFixed()}, ${ending}`;
  }

  /** Whatever was opened by the way is closed, as Escape does. */
  async rest(): Promise<void> {
    for (let count = 0; count < 4; count += 1) await this.opened.page.keyboard.press('Escape');
    if (this.isPortrait) await this.turn();
  }
}
