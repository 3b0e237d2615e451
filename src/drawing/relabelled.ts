/** Labels after another answer to the same plan: while a finger drags, few of them read otherwise. */
import type { Assessment } from '../assess/answer.ts';
import { fuseBriefs, fuseRatingA, type RunBrief, runBrief, runBriefs } from '../assess/brief.ts';
import type { Plan } from '../plan/schema.ts';
import { drawLabels, type LabelWords } from './labels.ts';
import type { LabelShape } from './shapes.ts';

const isSaidAlike = (before: RunBrief | undefined, now: RunBrief | undefined): boolean =>
  before === now ||
  (before?.gauge === now?.gauge &&
    before?.length.lengthM === now?.length.lengthM &&
    before?.length.origin === now?.length.origin &&
    (before?.unprotectedM ?? 0) > 0 === (now?.unprotectedM ?? 0) > 0);

/** Members of either list that are not at the same place in the other: of two answers much alike, few. */
function differing<T>(before: readonly T[], now: readonly T[]): T[] {
  if (before === now) return [];
  const notIn = (other: readonly T[]) => (one: T, place: number) => one !== other[place];
  return [...before.filter(notIn(now)), ...now.filter(notIn(before))];
}

/** The same labels of fittings and runs after another answer to the plan: only those that read otherwise are new. */
export function relabelled(
  labels: readonly LabelShape[],
  plan: Plan,
  sheetId: string,
  answers: { readonly before: Assessment; readonly now: Assessment },
  words: LabelWords,
): readonly LabelShape[] {
  const { before, now } = answers;
  const runIds = new Set(differing(runBriefs(before), runBriefs(now)).map(({ runId }) => runId));
  const fuseIds = new Set(differing(fuseBriefs(before), fuseBriefs(now)).map(({ fittingId }) => fittingId));
  const runs = plan.runs.filter(
    ({ id, sheetId: on }) => runIds.has(id) && on === sheetId && !isSaidAlike(runBrief(before, id), runBrief(now, id)),
  );
  const fittings = plan.fittings.filter(
    ({ id }) => fuseIds.has(id) && fuseRatingA(before, id) !== fuseRatingA(now, id),
  );
  if (runs.length === 0 && fittings.length === 0) return labels;
  const fresh = new Map(drawLabels(plan, { sheetId, runs, fittings }, now, words).map((label) => [label.key, label]));
  const renewed = new Set([...runs.map(({ id }) => `run.${id}`), ...fittings.map(({ id }) => `fitting.${id}`)]);
  const kept = labels.flatMap((label) => {
    if (!renewed.has(label.key)) return [label];
    const now = fresh.get(label.key);
    fresh.delete(label.key);
    return now ?? [];
  });
  // what had nothing to say before comes last
  return [...kept, ...[...fresh.values()].filter(({ key }) => renewed.has(key))];
}
