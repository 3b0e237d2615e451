import type { CDPSession, Page } from 'playwright-core';
import type { Place } from './finger.ts';
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
      this.at = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
      await this.send('mouseMoved');
    }
  }

  async up(): Promise<void> {
    await this.send('mouseReleased');
  }

  /** Along a line of places, from the first to the last. */
  async stroke([first, ...rest]: readonly Place[]): Promise<void> {
    if (first === undefined) throw new Error('A stroke goes from somewhere.');
    await this.down(first);
    for (const place of rest) await this.move(place, 1);
    await this.up();
  }
}
