import type { Assessment } from '../assess/answer.ts';
import type { Plan } from '../plan/schema.ts';

type Assess = (plan: Plan) => Assessment;

let assess: Assess | null = null;
let loading: Promise<void> | null = null;

/** Fetches what works out the answer, once: it comes beside the page, which shows its frame meanwhile. */
export function loadAssess(): Promise<void> {
  loading ??= import('../assess/assess.ts').then((room) => {
    assess = room.assess;
  });
  return loading;
}

const answers = new WeakMap<Plan, Assessment>();

/** Works the answer out here and now. Throws before `loadAssess` has settled. */
export function assessNow(plan: Plan): Assessment {
  if (assess === null) throw new Error('An answer was asked for before the assessment was loaded.');
  return assess(plan);
}

/**
 * The assessment of a plan, worked out once per plan object: plans are never changed in place.
 * Throws before `loadAssess` has settled: nothing that shows an answer is rendered until then.
 */
export function answerOf(plan: Plan): Assessment {
  const known = answers.get(plan);
  if (known !== undefined) return known;
  const answer = assessNow(plan);
  answers.set(plan, answer);
  return answer;
}

/** Keeps an answer that was worked out elsewhere, where there is none yet. */
export function keepAnswer(plan: Plan, answer: Assessment): void {
  if (!answers.has(plan)) answers.set(plan, answer);
}
