import type { SourceId } from '../sources.ts';

/** What the standard says of one multiple of the rating: opens no sooner and no later than that, s; null: no such limit. */
interface TimePoint {
  /** Current over rating. */
  readonly multiple: number;
  readonly minS: number | null;
  readonly maxS: number | null;
  readonly source: SourceId;
}

const point = (source: SourceId, percent: number, minS: number | null, maxS: number | null): TimePoint => ({
  multiple: percent / 100,
  minS,
  maxS,
  source,
});

const MEMORY_3 = 'iso8820part3TimesMemory';
const MEMORY_5 = 'iso8820part5TimesMemory';

/**
 * Operating time limits of ISO 8820 fuse-links at 23 degC, by family; a family not listed has none published and none is
 * invented for it. Sources: type E and the 160 and 200 % of type C from data sheets quoted in public notes (second hand);
 * the rest from memory, bolt-in types with little confidence. (Another edition of type E is remembered with 60 s at 200 %.)
 * Every minimum lies below the constant I2t line of the one before, every maximum below the one before.
 */
const TIMES: Readonly<Record<string, readonly TimePoint[]>> = {
  'iso8820-3-F': [
    point(MEMORY_3, 110, 360_000, null),
    point(MEMORY_3, 135, 0.75, 600),
    point(MEMORY_3, 160, 0.25, 50),
    point(MEMORY_3, 200, 0.15, 5),
    point(MEMORY_3, 350, 0.04, 0.5),
    point(MEMORY_3, 600, null, 0.1),
  ],
  'iso8820-3-C': [
    point(MEMORY_3, 110, 360_000, null),
    point(MEMORY_3, 135, 0.75, 600),
    point('typeCTimes', 160, 0.25, 50),
    point('typeCTimes', 200, 0.15, 5),
    point(MEMORY_3, 350, 0.04, 0.5),
    point(MEMORY_3, 600, null, 0.1),
  ],
  'iso8820-3-E': [
    point('typeETimes', 100, 360_000, null),
    point('typeETimes', 135, 60, 1800),
    point('typeETimes', 200, 2, 50),
    point('typeETimes', 350, 0.2, 7),
    point('typeETimes', 600, 0.04, 1),
  ],
  'iso8820-5-SF30': [
    point(MEMORY_5, 100, 14_400, null),
    point(MEMORY_5, 135, 60, 1800),
    point(MEMORY_5, 200, 1, 15),
    point(MEMORY_5, 350, 0.3, 5),
    point(MEMORY_5, 600, 0.1, 1),
  ],
  'iso8820-5-SF51': [
    point(MEMORY_5, 100, 14_400, null),
    point(MEMORY_5, 135, 120, 1800),
    point(MEMORY_5, 200, 1, 15),
    point(MEMORY_5, 350, 0.3, 5),
    point(MEMORY_5, 600, 0.1, 1),
  ],
};

/** A test point with the time it states. */
export interface TimeLimit {
  readonly multiple: number;
  readonly seconds: number;
  readonly source: SourceId;
}

export interface FuseTimes {
  readonly points: readonly TimePoint[];
  /** Up to this multiple it carries on. */
  readonly carries: number;
  /** The points that state a fastest time, ascending in current. */
  readonly fastest: readonly TimeLimit[];
  /** The points that state a slowest time, ascending in current. */
  readonly slowest: readonly TimeLimit[];
}

function lineOf(points: readonly TimePoint[], side: 'minS' | 'maxS'): readonly TimeLimit[] {
  return points.flatMap(({ multiple, source, [side]: seconds }) =>
    seconds === null ? [] : [{ multiple, seconds, source }],
  );
}

const HELD: ReadonlyMap<string, FuseTimes> = new Map(
  Object.entries(TIMES).map(([family, points]) => [
    family,
    {
      points,
      carries: points[0]?.multiple ?? 1,
      // The first point says how long it was tested to carry, not when it opens.
      fastest: lineOf(points.slice(1), 'minS'),
      slowest: lineOf(points, 'maxS'),
    },
  ]),
);

/** Time limits of a family, or null: none published that we hold. 'iso8820-3-E' has five points. */
export const fuseTimes = (family: string): FuseTimes | null => HELD.get(family) ?? null;

/**
 * Below this multiple of the rating no fuse need ever open; at it every listed one does within half an hour.
 * Source: ISO 8820; trust: memory. Taken for links without published times too.
 */
export const OPENING_MULTIPLE = 1.35;
