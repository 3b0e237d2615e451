import type { CDPSession, Page } from 'playwright-core';
import { between, type Place, startOfSlide } from './finger.ts';
import { drawn } from './reading.ts';

type PenType = 'mousePressed' | 'mouseMoved' | 'mouseReleased';

const MOVE_STEPS = 8;

/** A pen on the glass: the page gets pointer events of a pen through the browser's own input path. */
export class Pen {
  private at: Place = { x: 0, y: 0 };

  private constructor(
    private readonly page: Page,
    private readonly session: CDPSession,
  ) {}

  static async on(page: Page): Promise<Pen> {
    return new Pen(page, await page.context().newCDPSession(page));
  }

  private async send(type: PenType): Promise<void> {
    const buttons = type === 'mouseReleased' ? 0 : 1;
    await this.session.send('Input.dispatchMouseEvent', {
      type,
      ...this.at,
      pointerType: 'pen',
      button: 'left',
      buttons,
      force: buttons / 2,
      clickCount: type === 'mouseMoved' ? 0 : 1,
    });
    await drawn(this.page);
  }

  async down(at: Place): Promise<void> {
    this.at = at;
    await this.send('mousePressed');
  }

  async move(to: Place, steps = MOVE_STEPS): Promise<void> {
    const from = this.at;
    for (let step = 1; step <= steps; step += 1) {
      const part = step / steps;
      this.at = between(from, to, part);
      await this.send('mouseMoved');
    }
  }

  /** Down and on its way at once, and there it stays: see the finger's. */
  async slide(from: Place, to: Place, steps = MOVE_STEPS): Promise<void> {
    const first = startOfSlide(from, to, steps);
    const started = this.down(from);
    await Promise.all([started, this.move(first, 1)]);
    if (steps > 1) await this.move(to, steps - 1);
  }

  async up(): Promise<void> {
    await this.send('mouseReleased');
  }

  /** Along a line of places, from the first to the last. */
  async stroke([first, second, ...rest]: readonly Place[]): Promise<void> {
    if (first === undefined || second === undefined) throw new Error('A stroke goes from somewhere to somewhere.');
    await this.slide(first, second, 1);
    for (const place of rest) await this.move(place, 1);
    await this.up();
  }
}
