/** Layout checks over what is visible now. Each answers one line per fault, naming the place; none is the wanted answer. */
import type { Locator, Page } from 'playwright-core';
import { type LayoutFaults, measureLayout } from './measureLayout.ts';

/** The least width and height of anything a finger is to hit, in CSS pixels; with big fingers, 56. */
const LEAST_TARGET_PX = { fine: 44, big: 56 };
/** The least way between two of them, in CSS pixels. */
const LEAST_GAP_PX = 8;

const measured = (page: Page, within?: string): Promise<LayoutFaults> =>
  page.evaluate(measureLayout, { leastTargetPx: LEAST_TARGET_PX, leastGapPx: LEAST_GAP_PX, within });

/** All of what follows, measured once: each line with what kind of fault it is. `within`: only what is in that. */
export async function layoutFaults(page: Page, within?: string): Promise<string[]> {
  const { clipped, overlapping, sideways, small, crowded, torn } = await measured(page, within);
  return [
    ...clipped.map((line) => `cut off: ${line}`),
    ...overlapping.map((line) => `overlapping: ${line}`),
    ...sideways.map((line) => `sideways: ${line}`),
    ...small.map((line) => `too small: ${line}`),
    ...crowded.map((line) => `too near: ${line}`),
    ...torn.map((line) => `torn: ${line}`),
  ];
}

/** Pairs of controls that lie on one another, neither being inside the other. */
export const overlaps = async (page: Page): Promise<string[]> => (await measured(page)).overlapping;

/** Controls cut off where no scrolling brings them back, and text too long for its box that is not shortened by dots. */
export const clipped = async (page: Page): Promise<string[]> => (await measured(page)).clipped;

/** Controls a finger would miss: too small either way, labels counted in, links in running text left out. */
export const smallTargets = async (page: Page): Promise<string[]> => (await measured(page)).small;

/** Pairs of controls, one of which does something, so near one another that a finger hits both. */
export const crowded = async (page: Page): Promise<string[]> => (await measured(page)).crowded;

/** Words parted at the end of a line without a hyphen. */
export const torn = async (page: Page): Promise<string[]> => (await measured(page)).torn;

/** What makes the page scroll sideways. */
export const sidewaysScroll = async (page: Page): Promise<string[]> => (await measured(page)).sideways;

/** The text of those of the elements that stands on more than one line. */
export const broken = (elements: Locator): Promise<string[]> =>
  elements.evaluateAll((all) =>
    all.flatMap((element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
      return lines.size > 1 ? [element.textContent ?? ''] : [];
    }),
  );
