import { words } from '../../words/full.ts';
import { parseNumber } from '../../words/length.ts';
import type { Bounds } from '../inputs.ts';
import type { Read } from './useDraft.ts';

/** '30 30' -> [30, 30]: several figures in one field, with spaces, + or ; between; '' -> []. */
export function readNumbers(text: string, { min, max }: Bounds, label: string, hint: string): Read<number[]> {
  const parts = text.split(/[\s;+]+/).filter((part) => part !== '');
  const values: number[] = [];
  for (const part of parts) {
    const read = parseNumber(part, min, max);
    if (!read.ok) {
      const problem = words.fields.numberProblem(read.problem, label, String(min), String(max));
      return { ok: false, error: `${problem} ${hint}` };
    }
    values.push(read.value);
  }
  return { ok: true, value: values };
}
