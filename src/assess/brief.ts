/**
 * The little of an answer that is seen of every run and fuse at once: on the sketch, while a finger drags. The answer
 * itself says the same, among forty figures more.
 */
import type { Assessment, FuseAnswer, RuleId, RunAnswer } from './answer.ts';
import { type Members, membersOf } from './members.ts';

export type RunBrief = Pick<RunAnswer, 'runId' | 'gauge' | 'areaMm2' | 'length' | 'unprotectedM'>;

export type FuseBrief = Pick<FuseAnswer, 'fittingId' | 'ratingA'>;

type Full = Pick<Assessment, 'runs' | 'fuses' | 'findings'>;

export const runBriefsOf = ({ runs }: Full): RunBrief[] =>
  runs.map(({ runId, gauge, areaMm2, length, unprotectedM }) => ({ runId, gauge, areaMm2, length, unprotectedM }));

/** Fuses that are fittings; those of a block's outputs are not told apart on the sketch. */
export const fuseBriefsOf = ({ fuses }: Full): FuseBrief[] =>
  fuses.flatMap(({ fittingId, terminal, ratingA }) => (terminal === null ? [{ fittingId, ratingA }] : []));

export const bareOf = ({ runs }: Full): string[] =>
  runs.flatMap(({ runId, unprotectedM }) => (unprotectedM > 0 ? [runId] : []));

export const brokenOf = ({ findings }: Full): RuleId[] => [...new Set(findings.map(({ rule }) => rule))];

export const runIdOf = ({ runId }: RunBrief): string => runId;
export const fuseIdOf = ({ fittingId }: FuseBrief): string => fittingId;

export interface Brief {
  readonly runs: Members<RunBrief>;
  readonly fuses: Members<FuseBrief>;
  /** Runs of which a stretch is protected by nothing. */
  readonly bare: readonly string[];
  /** Rules of its findings. */
  readonly broken: readonly RuleId[];
}

const known = new WeakMap<Assessment, Brief>();

/** Tells what an answer says in brief, where that is known before its parts have been read. */
export function tellBrief(answer: Assessment, brief: Brief): void {
  known.set(answer, brief);
}

/** Answers never change: each is gone through once. */
export function briefOf(answer: Assessment): Brief {
  const before = known.get(answer);
  if (before !== undefined) return before;
  const brief = {
    runs: membersOf(runBriefsOf(answer), runIdOf),
    fuses: membersOf(fuseBriefsOf(answer), fuseIdOf),
    bare: bareOf(answer),
    broken: brokenOf(answer),
  };
  known.set(answer, brief);
  return brief;
}

/** What the answer says of a run; undefined for one that it does not know. */
export const runBrief = (answer: Assessment, runId: string): RunBrief | undefined => briefOf(answer).runs.get(runId);

/** Runs of which a stretch is protected by nothing, in the order of the answer. */
export function bareBriefs(answer: Assessment): RunBrief[] {
  const { runs, bare } = briefOf(answer);
  return bare.flatMap((id) => runs.get(id) ?? []);
}

/** Whether it has a finding by that rule. */
export const isBroken = (answer: Assessment, rule: RuleId): boolean => briefOf(answer).broken.includes(rule);

/** The rating of a fuse that is a fitting of its own, A; null where there is none. */
export const fuseRatingA = (answer: Assessment, fittingId: string): number | null =>
  briefOf(answer).fuses.get(fittingId)?.ratingA ?? null;
