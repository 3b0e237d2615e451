/**
 * The little of an answer that is seen of every run and fuse at once: on the sketch, while a finger drags. The answer
 * itself says the same, among forty figures more.
 */
import type { Assessment, FuseAnswer, RunAnswer } from './answer.ts';

export type RunBrief = Pick<RunAnswer, 'runId' | 'gauge' | 'areaMm2' | 'length' | 'unprotectedM'>;

type FuseBrief = Pick<FuseAnswer, 'fittingId' | 'ratingA'>;

export interface Brief {
  readonly runs: readonly RunBrief[];
  /** Fuses that are fittings; those of a block's outputs are not told apart on the sketch. */
  readonly fuses: readonly FuseBrief[];
}

export const shorten = ({ runs, fuses }: Pick<Assessment, 'runs' | 'fuses'>): Brief => ({
  runs: runs.map(({ runId, gauge, areaMm2, length, unprotectedM }) => ({
    runId,
    gauge,
    areaMm2,
    length,
    unprotectedM,
  })),
  fuses: fuses.flatMap(({ fittingId, terminal, ratingA }) => (terminal === null ? [{ fittingId, ratingA }] : [])),
});

type Places = ReadonlyMap<string, number>;

interface Known {
  readonly brief: Brief;
  /** Where in the lists each run and fuse stands, by id. */
  readonly runs: Places;
  readonly fuses: Places;
}

const known = new WeakMap<Assessment, Known>();

/** The places before, where each member stands where it stood: while a finger drags they do. */
function placesOf<T>(
  list: readonly T[],
  idOf: (one: T) => string,
  before?: { list: readonly T[]; places: Places },
): Places {
  const isAsBefore =
    before !== undefined &&
    list.length === before.list.length &&
    list.every((one, place) => {
      const was = before.list[place];
      return one === was || (was !== undefined && idOf(one) === idOf(was));
    });
  return isAsBefore ? before.places : new Map(list.map((one, place) => [idOf(one), place]));
}

/** Tells what an answer says in brief, where that is known before its parts have been read; `before`: one much like it. */
export function tellBrief(answer: Assessment, brief: Brief, before: Assessment | null = null): void {
  const was = before === null ? undefined : known.get(before);
  const { runs, fuses } = brief;
  known.set(answer, {
    brief,
    runs: placesOf(runs, ({ runId }) => runId, was && { list: was.brief.runs, places: was.runs }),
    fuses: placesOf(fuses, ({ fittingId }) => fittingId, was && { list: was.brief.fuses, places: was.fuses }),
  });
}

/** Answers never change: each is gone through once. */
function knownOf(answer: Assessment): Known {
  const before = known.get(answer);
  if (before !== undefined) return before;
  tellBrief(answer, shorten(answer));
  return knownOf(answer);
}

export const briefOf = (answer: Assessment): Brief => knownOf(answer).brief;

/** All runs in brief, in the order of the answer. */
export const runBriefs = (answer: Assessment): readonly RunBrief[] => briefOf(answer).runs;

/** All fuses that are fittings in brief. */
export const fuseBriefs = (answer: Assessment): readonly FuseBrief[] => briefOf(answer).fuses;

/** What the answer says of a run; undefined for one that it does not know. */
export function runBrief(answer: Assessment, runId: string): RunBrief | undefined {
  const { brief, runs } = knownOf(answer);
  return brief.runs[runs.get(runId) ?? -1];
}

/** The rating of a fuse that is a fitting of its own, A; null where there is none. */
export function fuseRatingA(answer: Assessment, fittingId: string): number | null {
  const { brief, fuses } = knownOf(answer);
  return brief.fuses[fuses.get(fittingId) ?? -1]?.ratingA ?? null;
}
