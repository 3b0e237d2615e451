import { words } from '../../words/full.ts';
import { writeNumber } from '../../words/number.ts';
import { parseRatings } from '../../words/ratings.ts';
import type { Bounds } from '../inputs.ts';
import type { Read } from './useDraft.ts';

const summed = (values: readonly number[]): string => values.map((value) => writeNumber(value)).join(' + ');

/** '30 30' or '30/30' -> [30, 30]: several ratings in one field; '' -> []. */
export function readNumbers(text: string, { min, max }: Bounds, label: string, hint: string): Read<number[]> {
  const read = parseRatings(text, min, max);
  if (read.ok) return { ok: true, value: read.values };
  const { numberProblem, inDoubt } = words.fields;
  const error =
    read.problem === 'inDoubt'
      ? inDoubt(label, read.typed, summed(read.readings[0]), summed(read.readings[1]))
      : `${numberProblem(read.problem, label, writeNumber(min), writeNumber(max), 'A')} ${hint}`;
  return { ok: false, error };
}
