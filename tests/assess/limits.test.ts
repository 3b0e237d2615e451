/** The pass over the tree and the greatest flows are two ways to one figure (RULES 5). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsByFlow } from '../../src/assess/limits.ts';
import { buildModel } from '../../src/assess/model.ts';
import { treeLimits } from '../../src/assess/treeLimits.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { anyPlan } from './anyPlan.ts';
import { anyTree } from './anyTree.ts';

const RUNS = process.env.FEEDRUN_LONG === undefined ? 400 : 10_000;
const capacities = fc.array(fc.constantFrom(5, 30, 60, 125, 300, Infinity), { minLength: 40, maxLength: 40 });

/** Whether the tree's pass speaks at all, having checked that it says what the flows say. */
function agrees(plan: Plan, capacityA: readonly number[]): boolean {
  const model = buildModel(plan);
  const linkA = model.circuit.links.map((_, link) => capacityA[link % capacityA.length] ?? 0);
  const byTree = treeLimits(model, linkA);
  if (byTree !== null) expect(byTree).toEqual(limitsByFlow(model, linkA));
  return byTree !== null;
}

describe('what fuses let into each cable', () => {
  it('is the same over the tree as by greatest flows, in any tree', { timeout: 300_000 }, () => {
    let spoken = 0;
    fc.assert(
      fc.property(anyTree(), capacities, (plan, capacityA) => {
        if (agrees(plan, capacityA)) spoken += 1;
      }),
      { numRuns: RUNS, seed: 20260201 },
    );
    expect(spoken).toBeGreaterThan(0.8 * RUNS);
  });

  it('is the same in any plan that the tree takes for one', { timeout: 300_000 }, () => {
    let spoken = 0;
    fc.assert(
      fc.property(anyPlan, capacities, (plan, capacityA) => {
        if (agrees(plan, capacityA)) spoken += 1;
      }),
      { numRuns: 3 * RUNS, seed: 20260202 },
    );
    expect(spoken).toBeGreaterThan(20);
  });
});
