/** Labels after another answer to the same plan: while a finger drags, few of them read otherwise. */
import type { Assessment } from '../assess/answer.ts';
import { fuseRatingA, type RunBrief, runBrief } from '../assess/brief.ts';
import type { Plan } from '../plan/schema.ts';
import { drawLabels, type Labelled, type LabelWords } from './labels.ts';
import type { LabelShape } from './shapes.ts';

const isSaidAlike = (before: RunBrief | undefined, now: RunBrief | undefined): boolean =>
  before === now ||
  (before?.gauge === now?.gauge &&
    before?.length.lengthM === now?.length.lengthM &&
    before?.length.origin === now?.length.origin &&
    (before?.unprotectedM ?? 0) > 0 === (now?.unprotectedM ?? 0) > 0);

/** The same labels of what is on a sheet after another answer to the plan: only those that read otherwise are new. */
export function relabelled(
  labels: readonly LabelShape[],
  plan: Plan,
  on: Labelled,
  answers: { readonly before: Assessment; readonly now: Assessment },
  words: LabelWords,
): readonly LabelShape[] {
  const { before, now } = answers;
  const runs = on.runs.filter(({ id }) => !isSaidAlike(runBrief(before, id), runBrief(now, id)));
  const fittings = on.fittings.filter(({ id }) => fuseRatingA(before, id) !== fuseRatingA(now, id));
  if (runs.length === 0 && fittings.length === 0) return labels;
  const other = { sheetId: on.sheetId, runs, fittings };
  const fresh = new Map(drawLabels(plan, other, now, words).map((label) => [label.key, label]));
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
