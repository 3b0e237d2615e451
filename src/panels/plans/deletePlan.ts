import { startPlan } from '../../desk/acts/startPlan.ts';
import type { Desk } from '../../desk/desk.ts';
import { choice } from '../../look/choices.ts';
import { DEFAULT_OUTLINES } from '../../plan/outline.ts';
import { words } from '../../words/index.ts';
import { measuresFor } from '../../words/language.ts';
import type { KeptPlanEntry, PlanFiles } from '../topbar/files.ts';

type PutBack = () => Promise<void>;

/** Takes a kept plan out, and answers how to put it back. */
export async function deletePlan(
  desk: Desk,
  files: PlanFiles,
  kept: readonly KeptPlanEntry[],
  planId: string,
): Promise<PutBack> {
  if (files.openId() !== planId) return files.plans.remove(planId);
  const blank = await clearDesk(desk, files, kept, planId);
  const putBack = await files.plans.remove(planId);
  return async () => {
    await putBack();
    const isUntouched = blank !== null && desk.getState().plan === blank;
    await files.openKept(planId);
    // the sheet that stood in for it was nobody's yet
    if (isUntouched) await files.plans.remove(blank.id);
  };
}

/** Another plan comes onto the desk first: the one saved last, else an empty one, which is answered. */
async function clearDesk(desk: Desk, files: PlanFiles, kept: readonly KeptPlanEntry[], planId: string) {
  const next = kept.find((entry) => entry.planId !== planId && entry.plan !== null);
  if (next !== undefined) {
    await files.openKept(next.planId);
    return null;
  }
  startPlan(desk, {
    ...measuresFor(choice('language'), navigator.languages),
    ...{ name: words.newPlan.untitled, outline: DEFAULT_OUTLINES.panelVan, mirrored: false },
  });
  return desk.getState().plan;
}
