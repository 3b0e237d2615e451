import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fittingById, runById, runsAt } from '../../src/plan/byId.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { randomEdits } from './support/randomEdits.ts';
import { sampleOfAll } from './support/samplePlan.ts';

/** Looked up in an index, against a look at each member. */
function expectFound(plan: Plan): void {
  for (const id of [...plan.fittings.map((one) => one.id), 'no such fitting']) {
    expect(fittingById(plan, id)).toBe(plan.fittings.find((one) => one.id === id));
    expect(runsAt(plan, id)).toEqual(plan.runs.filter(({ from, to }) => [from.fittingId, to.fittingId].includes(id)));
  }
  for (const id of [...plan.runs.map((one) => one.id), 'no such run'])
    expect(runById(plan, id)).toBe(plan.runs.find((one) => one.id === id));
}

it('finds what a plan holds after any edits, and still in the plans before them', () => {
  fc.assert(
    fc.property(randomEdits, (edits) => {
      const plans = [sampleOfAll()];
      for (const edit of edits) {
        const plan = edit(plans.at(-1) ?? sampleOfAll());
        plans.push(plan);
        expectFound(plan);
      }
      for (const plan of plans) expectFound(plan);
    }),
    { numRuns: 60, seed: 20261126 },
  );
});

it('knows the new ends of a run that was joined elsewhere, and the new place of one whose list was turned round', () => {
  const plan = sampleOfAll();
  const [run] = plan.runs;
  const elsewhere = plan.fittings.find(({ id }) => id !== run?.from.fittingId && id !== run?.to.fittingId);
  if (run === undefined || elsewhere === undefined) throw new Error('too small a plan');
  expectFound(plan);
  const to = { ...run.to, fittingId: elsewhere.id };
  expectFound({ ...plan, runs: plan.runs.map((one) => (one === run ? { ...run, to } : one)) });
  expectFound({ ...plan, runs: plan.runs.toReversed(), fittings: plan.fittings.toReversed() });
});
