/** What the planning page says and keeps, as its user would find it out. */
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { readRecords } from '../../support/reading.ts';

const DATABASE = 'feedrun';

/** The four large figures, by their labels. */
export type FigureLabel = 'Feed conductor' | 'Main fuse' | 'Worst drop' | 'Longest unprotected';

const linesOf = async (locator: Locator): Promise<string[]> =>
  (await locator.innerText()).split('\n').flatMap((line) => (line.trim() === '' ? [] : [line.trim()]));

export const figureButton = (page: Page, label: FigureLabel): Locator =>
  page.getByRole('list', { name: 'Figures' }).getByRole('button', { name: new RegExp(`^${label}`) });

/** A large figure as it is read: 'SAE 1/0', '150 A', '0.35 V', '25 cm'; and the words under it. */
export async function figure(page: Page, label: FigureLabel): Promise<{ value: string; governs: string }> {
  const [, value = '', ...governs] = await linesOf(figureButton(page, label));
  return { value, governs: governs.join(' ') };
}

export const shownValue = async (page: Page, label: FigureLabel): Promise<string> => (await figure(page, label)).value;

/** The verdict at the head of the answer. */
export const headline = (page: Page): Promise<string> =>
  page.getByRole('region', { name: 'Answer' }).getByRole('heading', { level: 2 }).first().innerText();

/** The row of a table of the answer that belongs to a name, cell by cell, each with its lines. */
export async function row(page: Page, table: 'Runs' | 'Fuses' | 'Amplifiers', name: string): Promise<string[][]> {
  const group = page
    .getByRole('table', { name: table })
    .getByRole('rowgroup')
    .filter({ has: page.getByRole('button', { name, exact: true }) });
  const cells = await group.getByRole('row').nth(1).getByRole('cell').all();
  return Promise.all(cells.map(linesOf));
}

/** A length as the page writes it, m: '25 cm', '1.9 m'. */
export function metres(text: string): number {
  const [, figures = '', unit = ''] = /([\d.]+) (cm|m)\b/.exec(text) ?? [];
  const value = Number(figures);
  if (figures === '' || Number.isNaN(value)) throw new Error(`'${text}' is no length.`);
  return unit === 'cm' ? value / 100 : value;
}

/** The number at the head of a text: '0.35 V'. */
export function number(text: string): number {
  const value = Number.parseFloat(text);
  if (Number.isNaN(value)) throw new Error(`'${text}' does not begin with a number.`);
  return value;
}

export const undoButton = (page: Page): Locator => page.getByRole('button', { name: /^Undo:/ });

/** How many steps can be taken back, as the button for it says. */
export async function undoDepth(page: Page): Promise<number> {
  const label = (await undoButton(page).getAttribute('aria-label')) ?? '';
  if (label === 'Undo: nothing to take back') return 0;
  const steps = /(\d+) steps?$/.exec(label)?.[1];
  if (steps === undefined) throw new Error(`'${label}' tells no number of steps.`);
  return Number(steps);
}

interface SavedPlan {
  readonly planId: string;
  readonly revision: number;
  readonly text: string;
}

function savedPlan({ planId, revision, text }: Record<string, unknown>): SavedPlan[] {
  const isOne = typeof planId === 'string' && typeof revision === 'number' && typeof text === 'string';
  return isOne ? [{ planId, revision, text }] : [];
}

/** The text in which the browser keeps the plan that was last worked on; null while it keeps none. */
export async function savedText(page: Page): Promise<string | null> {
  const [last] = await readRecords(page, DATABASE, 'desk');
  const records = (await readRecords(page, DATABASE, 'plans')).flatMap(savedPlan);
  const mine = records.filter(({ planId }) => planId === last?.planId);
  return mine.sort((one, other) => other.revision - one.revision)[0]?.text ?? null;
}

/** Waits until the saved text passes, and answers it. */
export async function untilSaved(page: Page, passes: (text: string) => boolean): Promise<string> {
  let text = '';
  await expect
    .poll(async () => {
      text = (await savedText(page)) ?? '';
      return passes(text);
    })
    .toBe(true);
  return text;
}

/** The ids of a plan's text replaced by their order of first appearance, so that only they may differ. */
export function withoutIds(text: string): string {
  const known = new Map<string, string>();
  const ids = [...text.matchAll(/"(?:id|sheetId|fittingId)":\s*"([^"]+)"/g)].flatMap(([, id]) => id ?? []);
  for (const id of ids) if (!known.has(id)) known.set(id, `id ${known.size + 1}`);
  return [...known].reduce((plain, [id, name]) => plain.replaceAll(`"${id}"`, `"${name}"`), text);
}
