import type { Assessment } from '../assess/answer.ts';
import { assess } from '../assess/assess.ts';
import type { Plan } from '../plan/schema.ts';

const answers = new WeakMap<Plan, Assessment>();

/** The assessment of a plan, worked out once per plan object: plans are never changed in place. */
export function answerOf(plan: Plan): Assessment {
  const known = answers.get(plan);
  if (known !== undefined) return known;
  const answer = assess(plan);
  answers.set(plan, answer);
  return answer;
}
