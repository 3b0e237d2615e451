import type { Assessment, FuseAnswer } from '../../assess/answer.ts';
import { runById } from '../../plan/byId.ts';
import type { Plan } from '../../plan/schema.ts';

type Verdict = Assessment['shorts'][number]['verdict'];

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
  return stretchOf(plan, fittingId, clearedBy(answer, { fittingId, terminal }, 'opensInTime'));
}

/** The cables on which this fuse has to clear a short, but may do so too late by the standard's slowest line. */
export const guardedBy = (plan: Plan, answer: Assessment, { fittingId, terminal }: FuseAnswer): Stretch | null =>
  stretchOf(plan, fittingId, clearedBy(answer, { fittingId, terminal }, 'cannotBeTold'));

/** The cables that leave this fuse and on which another one ahead of it is the one shown to clear a short in time. */
export function sharedBy(
  plan: Plan,
  answer: Assessment,
  { fittingId, terminal }: FuseAnswer,
): (Stretch & { aheadId: string }) | null {
  for (const short of answer.shorts) {
    const run = runById(plan, short.runId);
    const ahead = short.clearedBy;
    if (run === undefined || ahead === null || short.verdict !== 'opensInTime' || short.unprotected) continue;
    const leaves = [run.from, run.to].some(
      (end) => end.fittingId === fittingId && (terminal === null || end.terminal === terminal),
    );
    const isSeen = short.fuses.some((one) => one.fittingId === fittingId && one.terminal === terminal);
    if (!leaves || !isSeen || isSame(ahead, { fittingId, terminal })) continue;
    const stretch = stretchOf(plan, fittingId, [short.runId]);
    if (stretch !== null) return { ...stretch, aheadId: ahead.fittingId };
  }
  return null;
}

type Seat = Pick<FuseAnswer, 'fittingId' | 'terminal'>;
const isSame = (one: Seat, other: Seat): boolean =>
  one.fittingId === other.fittingId && one.terminal === other.terminal;

/** The cables on which a dead short is judged so, and this fuse is the one that decides. */
const clearedBy = ({ shorts }: Assessment, fuse: Seat, verdict: Verdict): string[] =>
  shorts
    .filter(
      (short) =>
        short.verdict === verdict &&
        !short.unprotected &&
        short.clearedBy !== null &&
        isSame(short.clearedBy, fuse) &&
        short.fuses.some((one) => isSame(one, fuse)),
    )
    .map(({ runId }) => runId);

function stretchOf(plan: Plan, fittingId: string, runIds: readonly string[]): Stretch | null {
  const runs = runIds.flatMap((runId) => runById(plan, runId) ?? []);
  const ends = runs.flatMap(({ from, to }) => [from.fittingId, to.fittingId]);
  // where only one of the runs comes in, the stretch ends
  const outer = ends.filter((id) => id !== fittingId && ends.indexOf(id) === ends.lastIndexOf(id));
  if (outer.length === 0) return null;
  if (ends.includes(fittingId)) return { fromId: fittingId, toIds: outer };
  const [fromId = '', ...toIds] = outer;
  return toIds.length === 0 ? null : { fromId, toIds };
}
