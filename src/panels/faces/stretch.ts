import type { Assessment, FuseAnswer } from '../../assess/answer.ts';
import { runById } from '../../plan/byId.ts';
import type { Plan } from '../../plan/schema.ts';

/** A stretch of cable by the fittings it lies between. */
export interface Stretch {
  fromId: string;
  toIds: readonly string[];
}

/**
 * What a fuse is shown to protect: the cables on which a dead short is cleared by this fuse, in every case that the
 * standard admits, before the insulation is damaged. Null when there are none: then nothing may be promised.
 */
export function protectedBy(plan: Plan, answer: Assessment, { fittingId, terminal }: FuseAnswer): Stretch | null {
  const runs = answer.shorts
    .filter(
      ({ verdict, unprotected, clearedBy }) =>
        verdict === 'opensInTime' &&
        !unprotected &&
        clearedBy?.fittingId === fittingId &&
        clearedBy.terminal === terminal,
    )
    .flatMap(({ runId }) => runById(plan, runId) ?? []);
  const ends = runs.flatMap(({ from, to }) => [from.fittingId, to.fittingId]);
  // where only one of the runs comes in, the stretch ends
  const outer = ends.filter((id) => id !== fittingId && ends.indexOf(id) === ends.lastIndexOf(id));
  if (outer.length === 0) return null;
  if (ends.includes(fittingId)) return { fromId: fittingId, toIds: outer };
  const [fromId = '', ...toIds] = outer;
  return toIds.length === 0 ? null : { fromId, toIds };
}
