/** Other ways to build the open plan, each a whole plan of its own: looked at side by side, one of them accepted. */
import type { Alternative } from '../plan/alternatives/alternative.ts';
import { copperClad } from '../plan/alternatives/copperClad.ts';
import { type OtherAmplifier, otherAmplifier } from '../plan/alternatives/otherAmplifier.ts';
import { secondBattery } from '../plan/alternatives/secondBattery.ts';
import { type Sized, thickerFeed } from '../plan/alternatives/thickerFeed.ts';
import { newId } from '../plan/create.ts';
import type { ProposedNames } from '../plan/propose/builder.ts';
import type { Plan } from '../plan/schema.ts';
import { answerOf } from './answer.ts';
import type { Desk } from './desk.ts';
import { commit } from './edit.ts';

/** Two currents that differ by no more than this share are one: they are worked out, and rounded, apart. */
const SAME_CURRENT = 1e-9;

/** The runs that carry what the conductor of the large figure carries: the feed, not branches of the same size. */
function feedOf(plan: Plan): Sized[] {
  const { runs, figures } = answerOf(plan);
  const feed = runs.find(({ runId }) => runId === figures.feed.places[0]?.id);
  const isPower = (runId: string) => plan.runs.find(({ id }) => id === runId)?.kind === 'power';
  if (feed === undefined || feed.fullA === null) return [];
  const feedA = feed.fullA;
  return runs.flatMap(({ runId, gauge, fullA }) =>
    gauge !== null && isPower(runId) && fullA !== null && Math.abs(fullA - feedA) <= SAME_CURRENT * feedA
      ? [{ runId, gauge }]
      : [],
  );
}

export function alternativesOf(
  plan: Plan,
  other: OtherAmplifier | null,
  nameOf: ProposedNames['fitting'],
): readonly Alternative[] {
  const feed = feedOf(plan);
  return [
    { id: 'thickerFeed', plan: feed.length === 0 ? null : thickerFeed(plan, feed) },
    { id: 'copperClad', plan: copperClad(plan) },
    { id: 'secondBattery', plan: secondBattery(plan, { fitting: nameOf }, newId) },
    { id: 'otherAmplifier', plan: other === null ? null : otherAmplifier(plan, other) },
  ];
}

/** Makes an alternative the plan, as one step of history; nothing when the plan has changed meanwhile. */
export const acceptAlternative = (desk: Desk, of: Plan, alternative: Plan): boolean =>
  commit(desk, 'alternative', (plan) => (plan === of ? alternative : plan));
