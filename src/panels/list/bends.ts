import { MAX_BENDS, type Point } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { type BareUnit, parseLength } from '../../words/length.ts';

const BOUNDS = { minM: 0, maxM: 100 };

/** 'x; y' a line -> points, or the first line that is none. */
export function readBends(
  text: string,
  bareUnit: BareUnit,
): { ok: true; bends: Point[] } | { ok: false; error: string } {
  const { fields, refusals } = words;
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  if (lines.length > MAX_BENDS) return { ok: false, error: refusals.tooManyBends };
  const bends: Point[] = [];
  for (const [index, line] of lines.entries()) {
    const [x, y] = line.split(';').map((part) => parseLength(part, bareUnit, BOUNDS));
    if (!x?.ok || !y?.ok || line.split(';').length !== 2) return { ok: false, error: fields.pairProblem(index + 1) };
    bends.push({ xM: x.m, yM: y.m });
  }
  return { ok: true, bends };
}
