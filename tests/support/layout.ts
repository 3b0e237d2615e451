/** Layout checks over what is visible now. Each answers one line per fault, naming the place; none is the wanted answer. */
import type { Page } from 'playwright-core';
import { measureLayout } from './measureLayout.ts';

/** The least width and height of anything a finger is to hit, in CSS pixels. */
const LEAST_TARGET_PX = 44;

/** All of what follows, measured once: each line with what kind of fault it is. `within`: only what is in that. */
export async function layoutFaults(page: Page, within?: string): Promise<string[]> {
  const { clipped, overlapping, sideways, small } = await page.evaluate(measureLayout, {
    leastTargetPx: LEAST_TARGET_PX,
    within,
  });
  return [
    ...clipped.map((line) => `cut off: ${line}`),
    ...overlapping.map((line) => `overlapping: ${line}`),
    ...sideways.map((line) => `sideways: ${line}`),
    ...small.map((line) => `too small: ${line}`),
  ];
}

/** Pairs of controls that lie on one another, neither being inside the other. */
export async function overlaps(page: Page): Promise<string[]> {
  return (await page.evaluate(measureLayout, { leastTargetPx: LEAST_TARGET_PX })).overlapping;
}

/** Controls cut off where no scrolling brings them back, and text too long for its box that is not shortened by dots. */
export async function clipped(page: Page): Promise<string[]> {
  return (await page.evaluate(measureLayout, { leastTargetPx: LEAST_TARGET_PX })).clipped;
}

/** Controls a finger would miss: smaller than `leastPx` either way, labels counted in, links in running text left out. */
export async function smallTargets(page: Page, leastPx = LEAST_TARGET_PX): Promise<string[]> {
  return (await page.evaluate(measureLayout, { leastTargetPx: leastPx })).small;
}

/** What makes the page scroll sideways. */
export async function sidewaysScroll(page: Page): Promise<string[]> {
  return (await page.evaluate(measureLayout, { leastTargetPx: LEAST_TARGET_PX })).sideways;
}
