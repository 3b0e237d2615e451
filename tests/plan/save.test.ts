import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { randomEdits } from './support/randomEdits.ts';
import { at, sampleOfAll, sampleVan } from './support/samplePlan.ts';

/** Many plans each; a busy machine takes longer than a single test may. */
const PROPERTY_TIMEOUT_MS = 60_000;

function opened(text: string): Plan {
  const result = openPlan(text);
  if (!result.ok) throw new Error(`${result.reason.code} at ${result.reason.where}`);
  return result.plan;
}

describe('savePlan', () => {
  it('writes the keys in one order, two spaces, and a newline at the end', () => {
    const text = savePlan(sampleVan());
    expect(text.startsWith('{\n  "format": "feedrun-plan",\n  "version": 4,\n  "id": "van",\n  "name": "Van",\n')).toBe(
      true,
    );
    expect(text.endsWith('"pictures": []\n}\n')).toBe(true);
  });

  it('equal plans are equal bytes, whatever order their keys were made in', () => {
    const plan = sampleVan();
    const { fittings, runs, ...rest } = plan;
    const reordered: Plan = {
      runs: runs.map(({ conductor, from, ...run }) => ({ conductor, from, ...run })),
      fittings: fittings.map(
        ({ at: place, id, ...fitting }) => ({ at: place, ...fitting, id }) as Plan['fittings'][number],
      ),
      ...rest,
    };
    expect(JSON.stringify(reordered)).not.toBe(JSON.stringify(plan));
    expect(savePlan(reordered)).toBe(savePlan(plan));
  });

  it('a move and the move back are the same bytes', () => {
    const plan = sampleVan();
    const there = moveFitting(plan, 'block', at(2.7, 0.57722));
    expect(savePlan(there)).not.toBe(savePlan(plan));
    expect(savePlan(moveFitting(there, 'block', at(3.2, 1)))).toBe(savePlan(plan));
  });

  it('throws on what is no plan, rather than write what will not open', () => {
    const plan = sampleVan();
    expect(() => savePlan({ ...plan, name: 'x'.repeat(201) })).toThrow();
  });
});

describe('any plan that edits make', () => {
  it(
    'opens again as itself and saves to the same bytes',
    () => {
      fc.assert(
        fc.property(randomEdits, (edits) => {
          const plan = edits.reduce((current, edit) => edit(current), sampleOfAll());
          const text = savePlan(plan);
          const again = opened(text);
          expect(again).toEqual(plan);
          expect(savePlan(again)).toBe(text);
        }),
        { numRuns: 80, seed: 20260701 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it(
    'is the same object when its bytes are the same, and never the same object when they are not',
    () => {
      fc.assert(
        fc.property(randomEdits, (edits) => {
          let plan = sampleOfAll();
          for (const edit of edits) {
            const before = JSON.stringify(plan);
            const after = edit(plan);
            expect(JSON.stringify(plan), 'an edit touched the plan it was given').toBe(before);
            expect(after === plan).toBe(JSON.stringify(after) === before);
            plan = after;
          }
        }),
        { numRuns: 80, seed: 20260702 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );
});
