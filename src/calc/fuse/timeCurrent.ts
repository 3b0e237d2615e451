import type { SourceId } from '../sources.ts';
import { type FuseTimes, fuseTimes, OPENING_MULTIPLE, type TimeLimit } from '../tables/fuseTimes.ts';
import { type Abouts, cited, type Recorder, type Why, whyBuilder } from '../why.ts';

/**
 * How soon and how late a fuse-link may open by its standard. The standard speaks at a few currents only; between them
 * each line is drawn on its own safe side:
 *
 * - slowest, for protection: straight between the points on a log-log chart. A link's own curve sags between two points
 *   (it flattens towards high currents), so it lies below that line. Beyond the last point the last time is held.
 * - fastest, for nuisance and for 'damaged first': constant I2t back from the next point. A link lets through no more
 *   I2t as the current rises, so it cannot open sooner. Beyond the last point constant I2t goes on: extrapolated.
 */
export interface FusePart {
  /** A family of `tables/links.ts`, or any other name: then no band is held. */
  readonly family: string;
  readonly ratingA: number;
}

export interface ClearingBand {
  /** It opens no sooner, s; null: at this current it carries on for good. */
  readonly fastestS: number | null;
  /** It opens no later, s; null: at this current it need not open at all. */
  readonly slowestS: number | null;
  /** The current lies beyond the last point of a line: the slowest is held there, the fastest extrapolated. */
  readonly extrapolated: boolean;
  readonly sources: readonly SourceId[];
}

interface Neighbours {
  /** The last point at that current or below. */
  readonly below: TimeLimit | null;
  readonly above: TimeLimit | null;
}

/** Place of the first point above a multiple; past the end where there is none. */
function placeAbove(line: readonly TimeLimit[], multiple: number): number {
  let place = 0;
  for (const point of line) {
    if (point.multiple > multiple) break;
    place += 1;
  }
  return place;
}

function neighbours(line: readonly TimeLimit[], multiple: number): Neighbours {
  const place = placeAbove(line, multiple);
  return { below: line[place - 1] ?? null, above: line[place] ?? null };
}

function recordPoint(name: '1' | '2', { multiple, seconds, source }: TimeLimit, rec: Recorder): void {
  rec.input(`m${name}`, '1', multiple, cited(source));
  rec.input(`t${name}`, 's', seconds, cited(source));
}

/** The slowest line at a multiple of the rating, s; Infinity: it need not open. */
export function slowestAtS({ slowest }: FuseTimes, multiple: number): number {
  const place = placeAbove(slowest, multiple);
  const [below, above] = [slowest[place - 1], slowest[place]];
  if (below === undefined) return Number.POSITIVE_INFINITY;
  if (above === undefined || below.multiple === multiple) return below.seconds;
  const slope = Math.log(above.seconds / below.seconds) / Math.log(above.multiple / below.multiple);
  return below.seconds * (multiple / below.multiple) ** slope;
}

/** The point that the fastest line is drawn from at a multiple; null: it carries on for good. */
function fastestFrom({ fastest, carries }: FuseTimes, multiple: number): TimeLimit | null {
  if (multiple <= carries) return null;
  const place = placeAbove(fastest, multiple);
  const below = fastest[place - 1];
  return below?.multiple === multiple ? below : (fastest[place] ?? below ?? null);
}

/** The fastest line at a multiple of the rating, s; Infinity: it carries on for good. */
export function fastestAtS(times: FuseTimes, multiple: number): number {
  const from = fastestFrom(times, multiple);
  return from === null ? Number.POSITIVE_INFINITY : from.seconds * (from.multiple / multiple) ** 2;
}

type Line = (times: FuseTimes, multiple: number, rec: Recorder) => void;

const recordSlowest: Line = (times, multiple, rec) => {
  const { below, above } = neighbours(times.slowest, multiple);
  if (below === null) return;
  recordPoint('1', below, rec);
  const seconds = slowestAtS(times, multiple);
  if (above === null || below.multiple === multiple) {
    rec.step('tSlowest', 's', 't1', seconds);
    return;
  }
  recordPoint('2', above, rec);
  const ratio = Math.log(above.seconds / below.seconds) / Math.log(above.multiple / below.multiple);
  rec.step('slopeTime', '1', 'log(t2 / t1) / log(m2 / m1)', ratio);
  rec.step('tSlowest', 's', 't1 * (m / m1) ^ slopeTime', seconds);
};

const recordFastest: Line = (times, multiple, rec) => {
  const from = fastestFrom(times, multiple);
  if (from === null) return;
  recordPoint('1', from, rec);
  const seconds = fastestAtS(times, multiple);
  if (from.multiple === multiple) rec.step('tFastest', 's', 't1', seconds);
  else rec.step('tFastest', 's', 't1 * (m1 / m) ^ 2', seconds, { source: 'fuseI2t' });
};

const orNever = (seconds: number): number | null => (seconds === Number.POSITIVE_INFINITY ? null : seconds);

const isBeyond = ({ below, above }: Neighbours, multiple: number): boolean =>
  above === null && below?.multiple !== multiple;

/**
 * Band in which a fuse opens at a constant current, or null: no times are published for its family.
 * Good for any current >= 0. Sources: see `tables/fuseTimes.ts`; 23 degC, a hot holder makes it faster.
 * Type E, 40 A, at 80 A: 2 to 50 s; at 400 A: 0.0144 (extrapolated) to 1 s (held); at 50 A (below 1.35): slowest null.
 */
export function clearingBand({ family, ratingA }: FusePart, currentA: number): ClearingBand | null {
  const times = fuseTimes(family);
  if (times === null) return null;
  const multiple = currentA / ratingA;
  const soon = neighbours(times.fastest, multiple);
  const late = neighbours(times.slowest, multiple);
  const used = [soon.below, soon.above, late.below, late.above].filter((point) => point !== null);
  return {
    fastestS: orNever(fastestAtS(times, multiple)),
    slowestS: orNever(slowestAtS(times, multiple)),
    extrapolated: isBeyond(soon, multiple) || isBeyond(late, multiple),
    sources: [...new Set(used.map(({ source }) => source))],
  };
}

/**
 * Least current at which the slowest line stands at that time or below, A; null where it never comes down to it, or no
 * times are published. The inverse of `clearingBand`'s slowest. Type E, 40 A, 50 s: 80 A; 5 s: between 2 and 3.5 times 40 A.
 */
export function slowestWithinA({ family, ratingA }: FusePart, seconds: number): number | null {
  const line = fuseTimes(family)?.slowest ?? [];
  const place = line.findIndex((point) => point.seconds <= seconds);
  const [before, after] = [line[place - 1], line[place]];
  if (after === undefined) return null;
  if (before === undefined) return after.multiple * ratingA;
  const share = Math.log(seconds / before.seconds) / Math.log(after.seconds / before.seconds);
  return before.multiple * (after.multiple / before.multiple) ** share * ratingA;
}

type Given = Abouts<'currentA' | 'ratingA'>;

function lineWhy(
  atS: (times: FuseTimes, multiple: number) => number,
  record: Line,
  result: string,
  of: FusePart,
  currentA: number,
  about: Given,
): Why | null {
  const times = fuseTimes(of.family);
  if (times === null) return null;
  const builder = whyBuilder();
  const current = builder.input('I', 'A', currentA, about.currentA);
  const rating = builder.input('In', 'A', of.ratingA, about.ratingA);
  const multiple = builder.step('m', '1', 'I / In', current / rating);
  if (atS(times, multiple) === Number.POSITIVE_INFINITY) return null;
  record(times, multiple, builder);
  return builder.done(result);
}

/** Why of `clearingBand`'s slowest time; the result is 'tSlowest'. Null where there is none. */
export function slowestWhy(of: FusePart, currentA: number, about: Given = {}): Why | null {
  return lineWhy(slowestAtS, recordSlowest, 'tSlowest', of, currentA, about);
}

/** Why of `clearingBand`'s fastest time; the result is 'tFastest'. Null where there is none. */
export function fastestWhy(of: FusePart, currentA: number, about: Given = {}): Why | null {
  return lineWhy(fastestAtS, recordFastest, 'tFastest', of, currentA, about);
}

/** Currents at which a line of the band bends or jumps, A, ascending. Without a band: the rating and 1.35 of it. */
export function bandBreaksA({ family, ratingA }: FusePart): readonly number[] {
  const multiples = fuseTimes(family)?.points.map(({ multiple }) => multiple) ?? [1, OPENING_MULTIPLE];
  return multiples.map((multiple) => multiple * ratingA);
}
