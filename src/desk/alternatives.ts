/** Other ways to build the open plan, each a whole plan of its own: looked at side by side, one of them accepted. */
import type { Alternative } from '../plan/alternatives/alternative.ts';
import { copperClad } from '../plan/alternatives/copperClad.ts';
import { type OtherAmplifier, otherAmplifier } from '../plan/alternatives/otherAmplifier.ts';
import { secondBattery } from '../plan/alternatives/secondBattery.ts';
import { type Sized, thickerFeed } from '../plan/alternatives/thickerFeed.ts';
import { newId } from '../plan/create.ts';
import type { FittingKind, Plan } from '../plan/schema.ts';
import { answerOf } from './answer.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';

/** The runs that are of the size of the feed: the conductor that the large figure speaks of. */
function feedOf(plan: Plan): Sized[] {
  const { runs, figures } = answerOf(plan);
  const isPower = (runId: string) => plan.runs.find(({ id }) => id === runId)?.kind === 'power';
  return runs.flatMap(({ runId, gauge }) =>
    gauge !== null && gauge === figures.feed.value && isPower(runId) ? [{ runId, gauge }] : [],
  );
}

export function alternativesOf(
  plan: Plan,
  other: OtherAmplifier | null,
  nameOf: (kind: FittingKind, plan: Plan) => string,
): readonly Alternative[] {
  const feed = feedOf(plan);
  return [
    { id: 'thickerFeed', plan: feed.length === 0 ? null : thickerFeed(plan, feed) },
    { id: 'copperClad', plan: copperClad(plan) },
    { id: 'secondBattery', plan: secondBattery(plan, nameOf, newId) },
    { id: 'otherAmplifier', plan: other === null ? null : otherAmplifier(plan, other) },
  ];
}

/** Makes an alternative the plan, as one step of history; nothing when the plan has changed meanwhile. */
export const acceptAlternative = (desk: Desk, of: Plan, alternative: Plan): boolean =>
  commit(desk, 'alternative', (plan) => (plan === of ? alternative : plan));
