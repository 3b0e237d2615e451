/** Words that a line break tears where nothing says they may be parted. */
import type { Locator } from 'playwright-core';

/**
 * Every word within a place that stands on more lines than its soft hyphens allow; each once. Words are what spaces,
 * dashes and strokes leave of a text.
 */
export async function tornWords(place: Locator): Promise<string[]> {
  return place.evaluate((element) => {
    const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    const torn = new Set<string>();
    const range = document.createRange();
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
      const around = text.parentElement;
      if (around?.checkVisibility({ visibilityProperty: true }) !== true) continue;
      // for screen readers alone
      if (around.clientWidth === 1 && around.clientHeight === 1) continue;
      for (const { 0: word, index } of (text.textContent ?? '').matchAll(/[^\s/–-]+/g)) {
        range.setStart(text, index);
        range.setEnd(text, index + word.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > word.split('\u00ad').length) torn.add(word);
      }
    }
    return [...torn];
  });
}
