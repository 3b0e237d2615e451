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

interface Known {
  readonly brief: Brief;
  readonly runs: ReadonlyMap<string, RunBrief>;
  readonly fuses: ReadonlyMap<string, FuseBrief>;
}

const known = new WeakMap<Assessment, Known>();

/** Tells what an answer says in brief, where that is known before its parts have been read. */
export function tellBrief(answer: Assessment, brief: Brief): void {
  known.set(answer, {
    brief,
    runs: new Map(brief.runs.map((run) => [run.runId, run])),
    fuses: new Map(brief.fuses.map((fuse) => [fuse.fittingId, fuse])),
  });
}

/** Answers never change: each is gone through once. */
function briefOf(answer: Assessment): Known {
  const before = known.get(answer);
  if (before !== undefined) return before;
  tellBrief(answer, shorten(answer));
  return briefOf(answer);
}

/** All runs in brief, in the order of the answer. */
export const runBriefs = (answer: Assessment): readonly RunBrief[] => briefOf(answer).brief.runs;

/** What the answer says of a run; undefined for one that it does not know. */
export const runBrief = (answer: Assessment, runId: string): RunBrief | undefined => briefOf(answer).runs.get(runId);

/** The rating of a fuse that is a fitting of its own, A; null where there is none. */
export const fuseRatingA = (answer: Assessment, fittingId: string): number | null =>
  briefOf(answer).fuses.get(fittingId)?.ratingA ?? null;
