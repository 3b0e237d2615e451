import type { Finding, RuleId } from '../../../src/assess/answer.ts';
import { assess } from '../../../src/assess/assess.ts';
import type { Plan } from '../../../src/plan/schema.ts';

/** What one rule finds in a plan. */
export const findingsOf = (plan: Plan, rule: RuleId): Finding[] =>
  assess(plan).findings.filter((finding) => finding.rule === rule);

/** The severities of what it finds. */
export const severitiesOf = (plan: Plan, rule: RuleId): string[] =>
  findingsOf(plan, rule).map(({ severity }) => severity);

export const told = <T>(value: T) => ({ value, origin: 'told' as const });
