/** The steps to a first plan, each with what shows that it is done. */
import type { Assessment } from '../../assess/answer.ts';
import type { FittingOf, Plan } from '../../plan/schema.ts';

/** What the steps are seen by. */
export interface Seen {
  readonly plan: Plan;
  readonly isExample: boolean;
  readonly answer: Pick<Assessment, 'findings'>;
}

const SOURCES: ReadonlySet<string> = new Set(['battery', 'jumpPost', 'takeOff']);

const amplifiersOf = ({ fittings }: Plan): FittingOf<'amplifier'>[] =>
  fittings.flatMap((fitting) => (fitting.kind === 'amplifier' ? [fitting] : []));

/** The first amplifier whose output nobody has told; undefined when there is none. */
export const untoldAmplifier = (plan: Plan): FittingOf<'amplifier'> | undefined =>
  amplifiersOf(plan).find(({ ratedW }) => ratedW === null);

const hasAmplifier = ({ plan }: Seen): boolean => amplifiersOf(plan).length > 0;

const isFreeOf = ({ answer }: Seen, ...rules: readonly string[]): boolean =>
  !answer.findings.some(({ rule, severity }) => severity !== 'note' && rules.includes(rule));

/**
 * In the order in which they are taken. A feed or a ground is done when the answer finds nothing missing there: what is
 * merely drawn may still lead nowhere.
 */
export const STEPS = [
  { id: 'plan', isDone: ({ isExample }: Seen) => !isExample },
  { id: 'battery', isDone: ({ plan }: Seen) => plan.fittings.some(({ kind }) => SOURCES.has(kind)) },
  { id: 'amplifier', isDone: (seen: Seen) => hasAmplifier(seen) && untoldAmplifier(seen.plan) === undefined },
  {
    id: 'feed',
    isDone: (seen: Seen) => hasAmplifier(seen) && isFreeOf(seen, 'not-fed', 'no-device', 'unprotected-length'),
  },
  { id: 'grounds', isDone: (seen: Seen) => hasAmplifier(seen) && isFreeOf(seen, 'ground-missing') },
  { id: 'tape', isDone: ({ plan }: Seen) => plan.runs.some(({ tapedM }) => tapedM !== null) },
  // only who has read it can say so
  { id: 'verdict', isDone: () => false },
] as const;

export type StepId = (typeof STEPS)[number]['id'];

/** Which steps are done, in their order. Nothing of a plan that is only the example is the user's own. */
export const doneSteps = (seen: Seen): boolean[] => STEPS.map((step) => !seen.isExample && step.isDone(seen));

/** The first step that is not done; the last one never is. */
export function currentStep(seen: Seen): number {
  const open = doneSteps(seen).indexOf(false);
  return open === -1 ? STEPS.length - 1 : open;
}
