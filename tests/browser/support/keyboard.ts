/**
 * Someone without mouse or screen: Tab, arrows, Enter and letters, going by the names that a screen reader would say.
 * Nothing here clicks, touches or focuses anything.
 */
import type { Page } from 'playwright-core';

/** What has the focus: its name, and the names of the parts of the page it stands in, from the inside out. */
interface Focused {
  readonly name: string;
  readonly parts: readonly string[];
  /** The choices of a list, and which of them is chosen. */
  readonly choices: readonly string[];
  readonly chosen: number;
}

/** Where to go: a control by its name (or how it begins), in a part of the page. */
export interface Goal {
  readonly name: string | RegExp;
  readonly part?: string;
}

const MOST_TABS = 250;

const isThere = ({ name, parts }: Focused, goal: Goal): boolean =>
  (typeof goal.name === 'string' ? name === goal.name : goal.name.test(name)) &&
  (goal.part === undefined || parts.includes(goal.part));

export class KeyboardUser {
  constructor(readonly page: Page) {}

  private focused(): Promise<Focused> {
    return this.page.evaluate(() => {
      const plain = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();
      const nameOf = (element: Element): string => {
        const labelledBy = element.getAttribute('aria-labelledby')?.split(' ') ?? [];
        const labels =
          'labels' in element && element.labels instanceof NodeList
            ? [...element.labels].map((label) => plain(label.textContent))
            : [];
        return (
          plain(element.getAttribute('aria-label')) ||
          labelledBy.map((id) => plain(document.getElementById(id)?.textContent)).join(' ') ||
          labels.join(' ') ||
          (/^(BUTTON|A|SUMMARY)$/.test(element.tagName) ? plain(element.textContent) : '')
        );
      };
      const element = document.activeElement ?? document.body;
      const parts: string[] = [];
      for (let around = element.parentElement; around !== null; around = around.parentElement) {
        const name = nameOf(around);
        if (name !== '') parts.push(name);
      }
      const select = element instanceof HTMLSelectElement ? element : null;
      return {
        name: nameOf(element),
        parts,
        choices: [...(select?.options ?? [])].map(({ text }) => text),
        chosen: select?.selectedIndex ?? -1,
      };
    });
  }

  async press(key: string): Promise<void> {
    await this.page.keyboard.press(key);
  }

  /** Goes on with Tab, or back, until the focus is there. */
  private async goBy(key: 'Tab' | 'Shift+Tab', goal: Goal): Promise<Focused> {
    const passed: string[] = [];
    for (let count = 0; count < MOST_TABS; count += 1) {
      await this.press(key);
      const here = await this.focused();
      if (isThere(here, goal)) return here;
      passed.push(here.name);
    }
    throw new Error(
      `${key} never came to '${goal.name}' in '${goal.part ?? 'the page'}', but past: ${passed.join(' | ')}`,
    );
  }

  tabTo(goal: Goal): Promise<Focused> {
    return this.goBy('Tab', goal);
  }

  tabBackTo(goal: Goal): Promise<Focused> {
    return this.goBy('Shift+Tab', goal);
  }

  /** Waits until an act has moved the focus by itself. */
  async untilFocus(goal: Goal): Promise<void> {
    for (let count = 0; count < MOST_TABS; count += 1) {
      if (isThere(await this.focused(), goal)) return;
      await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
    }
    throw new Error(`The focus never went to '${goal.name}', it is on '${(await this.focused()).name}'.`);
  }

  /** Types into the field that has the focus, in place of what it holds. */
  async write(text: string): Promise<void> {
    await this.press('Control+A');
    await this.page.keyboard.type(text);
  }

  /** Moves through the list that has the focus by arrows. */
  async choose(choice: string): Promise<void> {
    const { name, choices, chosen } = await this.focused();
    const wanted = choices.indexOf(choice);
    if (wanted < 0) throw new Error(`'${name}' offers no '${choice}', but: ${choices.join(' | ')}`);
    for (let at = chosen; at !== wanted; at += Math.sign(wanted - at)) {
      await this.press(wanted > at ? 'ArrowDown' : 'ArrowUp');
    }
  }
}
