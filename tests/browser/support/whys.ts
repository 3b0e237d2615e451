/** The reason behind a figure, read off the page and worked out again with a general evaluator. */
import { evaluate } from 'mathjs';
import type { Locator } from 'playwright-core';

interface Step {
  readonly symbol: string;
  readonly value: number | readonly number[];
  /** null for what went in. */
  readonly expression: string | null;
}

interface ReadWhy {
  readonly steps: readonly Step[];
  /** The symbol of the figure itself. */
  readonly result: string;
}

/** The two functions beside plain arithmetic that the page names; their names say what they do. */
const NAMED = {
  smallestAtLeast: (list: readonly number[], least: number) => Math.min(...list.filter((member) => member >= least)),
  largestAtMost: (list: readonly number[], most: number) => Math.max(...list.filter((member) => member <= most)),
};

/** What is shown has six figures; what is worked out of it may differ in the fifth. */
const SHOWN_SHARE = 1e-4;

function shownValue(text: string): number | readonly number[] {
  const plain = text.replace(/^= /, '').trim();
  const list = /^\[([^\]]*)\]/.exec(plain)?.[1];
  const read = (part: string): number => {
    const value = Number.parseFloat(part);
    if (Number.isNaN(value)) throw new Error(`'${text}' shows no figure.`);
    return value;
  };
  return list === undefined ? read(plain) : list.split(',').map(read);
}

async function readStep(row: Locator): Promise<Step> {
  const symbol = (await row.getByRole('rowheader').getByRole('code').innerText()).trim();
  const lines = (await row.getByRole('cell').innerText()).split('\n').map((line) => line.trim());
  const isWorked = (await row.getByRole('cell').getByRole('code').count()) > 0;
  const [first = '', second = ''] = lines.filter((line) => line !== '');
  if (!isWorked) return { symbol, value: shownValue(first), expression: null };
  return { symbol, value: shownValue(second), expression: first.replace(/^= /, '') };
}

export async function readWhy(dialog: Locator): Promise<ReadWhy> {
  const steps: Step[] = [];
  for (const row of await dialog.getByRole('row').all()) steps.push(await readStep(row));
  const [result = ''] = (await dialog.getByRole('code').first().innerText()).split(' = ');
  return { steps, result };
}

/** Works every step out from what is shown above it; answers the figure. Throws where the page shows another value. */
export function workOut({ steps, result }: ReadWhy): number {
  const known = new Map<string, number | readonly number[]>();
  for (const { symbol, value, expression } of steps) {
    if (expression === null) {
      known.set(symbol, value);
      continue;
    }
    const worked: unknown = evaluate(expression, { ...NAMED, ...Object.fromEntries(known) });
    const isShown =
      typeof worked === 'number' &&
      typeof value === 'number' &&
      Math.abs(worked - value) <= SHOWN_SHARE * Math.abs(value) + Number.EPSILON;
    if (!isShown) throw new Error(`${symbol} = ${expression} gives ${String(worked)}, but ${String(value)} is shown.`);
    known.set(symbol, worked);
  }
  const figure = known.get(result);
  if (typeof figure !== 'number') throw new Error(`'${result}' is no figure of this reason.`);
  return figure;
}
